#include "core/intake/text_table.h"

#include <algorithm>
#include <utility>

#include "core/intake/clock_time.h"
#include "core/intake/table_head.h"
#include "core/intake/text_encoding.h"
#include "core/intake/utf8.h"
#include "core/measure/number_text.h"

namespace fettle {
namespace {

constexpr std::size_t kRowsPerProgress = 16384;

/// Rows of plain numbers take a fast way that looks at each character once; whatever it does not understand
/// goes the careful way, which knows quotation marks, comments and every reason to refuse.
class RowReader {
 public:
  RowReader(const TableHead& head, const TextFormat& format, const ReadOptions& options)
      : m_format(format),
        m_options(options),
        m_at(head.rows.data()),
        m_end(head.rows.data() + head.rows.size()),
        m_line(head.firstLine),
        m_delimiter(delimiterCharacter(format.delimiter)),
        m_lineEnd(lineEndOf(head.rows)),
        m_row(format.columns.size()),
        m_clocks(format.columns.size()) {
    const bool words = std::count(format.columns.begin(), format.columns.end(), ColumnKind::words) > 0;
    m_fast = !words && m_delimiter != format.decimalSign;
    prepare(head);
  }

  Intake<TextTable> read() {
    const auto all = static_cast<double>(std::max<std::ptrdiff_t>(m_end - m_at, 1));
    for (std::size_t n = 1; m_at != m_end; ++n, ++m_line) {
      if (m_fast && readPlainRow()) {
        append();
      } else if (auto error = readAnyLine()) {
        return tl::unexpected(*std::move(error));
      }
      if (n % kRowsPerProgress == 0 && m_options.progress &&
          !m_options.progress(1.0 - static_cast<double>(m_end - m_at) / all)) {
        return refusal::cancelled();
      }
    }
    if (m_table.rows() == 0) {
      return refusal::noRows();
    }
    return std::move(m_table);
  }

 private:
  void prepare(const TableHead& head) {
    const auto lines = static_cast<std::size_t>(std::count(m_at, m_end, m_lineEnd)) + 1;
    for (std::size_t c = 0; c < m_format.columns.size(); ++c) {
      TextColumn column;
      column.header = head.headers[c];
      column.unit = head.units[c];
      column.kind = m_format.columns[c];
      if (column.kind != ColumnKind::words) {
        column.values.reserve(lines);
      }
      m_table.columns.push_back(std::move(column));
    }
    m_table.decimalSign = m_format.decimalSign;
  }

  const char* skipBlanks(const char* at) const {
    while (at != m_end && (*at == ' ' || (*at == '\t' && m_delimiter != '\t'))) {
      ++at;
    }
    return at;
  }

  /// Reads the row at m_at and steps over it. @return false, with nothing changed, for anything unusual
  bool readPlainRow() {
    const char* at = m_at;
    for (std::size_t c = 0; c < m_row.size(); ++c) {
      at = skipBlanks(at);
      at = m_format.columns[c] == ColumnKind::clock
               ? scanClockTime(at, m_end, m_format.decimalSign, m_row[c])
               : scanNumber(at, m_end, m_format.decimalSign, m_row[c]);
      if (at == nullptr) {
        return false;
      }
      const char* next = skipBlanks(at);
      if (c + 1 < m_row.size()) {
        const bool parted =
            m_format.delimiter == Delimiter::blanks ? next != at : next != m_end && *next == m_delimiter;
        if (!parted) {
          return false;
        }
        next += m_format.delimiter == Delimiter::blanks ? 0 : 1;
      }
      at = next;
    }
    if (at != m_end && *at == '\r' && m_lineEnd == '\n') {
      ++at;
    }
    if (at != m_end && *at != m_lineEnd) {
      return false;
    }
    m_at = at == m_end ? at : at + 1;
    return true;
  }

  std::optional<IntakeError> readAnyLine() {
    const char* end = std::find(m_at, m_end, m_lineEnd);
    std::string_view line(m_at, static_cast<std::size_t>(end - m_at));
    m_at = end == m_end ? end : end + 1;
    if (line.ends_with('\r')) {
      line.remove_suffix(1);
    }
    if (isBlankLine(line, m_format.delimiter) || isComment(line, m_format.delimiter)) {
      return std::nullopt;
    }
    auto cells = splitCells(line, m_format.delimiter);
    if (!cells) {
      return refusal::openQuote(m_line).value();
    }
    const std::size_t columns = m_row.size();
    if (cells->size() == columns + 1 && cells->back().empty()) {
      cells->pop_back();
    }
    if (cells->size() != columns) {
      const bool last = cells->size() < columns && m_at == m_end && m_table.rows() > 1;
      return refusal::cellCount(m_line, cells->size(), columns, last).value();
    }
    for (std::size_t c = 0; c < columns; ++c) {
      if (auto error = readCell(c, (*cells)[c])) {
        return error;
      }
    }
    append();
    return std::nullopt;
  }

  std::optional<IntakeError> readCell(std::size_t c, std::string& cell) {
    auto& column = m_table.columns[c];
    const CellPlace place{m_line, c + 1, column.header};
    if (column.kind == ColumnKind::words) {
      column.words.push_back(validUtf8(cell));
      return std::nullopt;
    }
    if (cell.empty()) {
      if (!m_options.blanksAllowed) {
        return refusal::emptyCell(place).value();
      }
      column.blankRows.push_back(m_table.rows());
      m_row[c] = 0.0;
      return std::nullopt;
    }
    const bool clock = column.kind == ColumnKind::clock;
    const auto value =
        clock ? clockTimeFromText(cell, m_format.decimalSign) : numberFromText(cell, m_format.decimalSign);
    if (!value) {
      return (clock ? refusal::notAClockTime(place, cell)
                    : refusal::notANumber(place, cell, m_format.decimalSign))
          .value();
    }
    m_row[c] = *value;
    return std::nullopt;
  }

  void append() {
    for (std::size_t c = 0; c < m_row.size(); ++c) {
      auto& column = m_table.columns[c];
      if (column.kind == ColumnKind::number) {
        column.values.push_back(m_row[c]);
      } else if (column.kind == ColumnKind::clock) {
        const bool blank = !column.blankRows.empty() && column.blankRows.back() == m_table.rows();
        column.values.push_back(blank ? 0.0 : m_clocks[c].elapsed(m_row[c]));
      }
    }
    m_table.lines.append(m_line);
  }

  const TextFormat& m_format;
  const ReadOptions& m_options;
  const char* m_at;
  const char* m_end;
  std::size_t m_line;
  char m_delimiter;
  char m_lineEnd;
  bool m_fast = true;
  std::vector<double> m_row;
  std::vector<ElapsedClock> m_clocks;
  TextTable m_table;
};

}  // namespace

void RowLines::append(std::size_t line) {
  if (m_runs.empty() || line != m_runs.back().firstLine + (m_rows - m_runs.back().firstRow)) {
    m_runs.push_back({m_rows, line});
  }
  ++m_rows;
}

std::size_t RowLines::lineOf(std::size_t row) const {
  if (row >= m_rows) {
    return 0;
  }
  const auto after =
      std::upper_bound(m_runs.begin(), m_runs.end(), row,
                       [](std::size_t wanted, const Run& run) { return wanted < run.firstRow; });
  const auto& run = *std::prev(after);
  return run.firstLine + (row - run.firstRow);
}

Intake<TextTable> readTable(std::string_view bytes, const TextFormat& format, const ReadOptions& options) {
  const auto text = PlainText::from(bytes);
  if (!text) {
    return tl::unexpected(text.error());
  }
  if (format.columns.empty()) {
    return refusal::noNumbers();
  }
  const auto head = readHead(text->view(), format);
  if (!head) {
    return tl::unexpected(head.error());
  }
  return RowReader(*head, format, options).read();
}

}  // namespace fettle
