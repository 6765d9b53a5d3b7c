#include "core/intake/format_trial.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <string>

#include "core/intake/clock_time.h"
#include "core/intake/table_head.h"
#include "core/measure/number_text.h"

namespace fettle {
namespace {

enum class CellKind { number, clock, missing, words, blank };

struct Row {
  SampleLine line;
  bool comment = false;
  std::vector<CellKind> kinds;
  double numbers = 0.0;  ///< how many cells speak for this format

  bool hasNumber() const {
    return std::any_of(kinds.begin(), kinds.end(),
                       [](auto kind) { return kind != CellKind::words && kind != CellKind::blank; });
  }
  bool hasWords() const { return std::count(kinds.begin(), kinds.end(), CellKind::words) > 0; }
};

CellKind kindOf(std::string_view cell, char decimalSign) {
  return cell.empty()                           ? CellKind::blank
         : numberFromText(cell, decimalSign)    ? CellKind::number
         : clockTimeFromText(cell, decimalSign) ? CellKind::clock
         : isMissingNumber(cell)                ? CellKind::missing
                                                : CellKind::words;
}

/// Of the comma that parts cells and the comma that is a decimal sign, each leaves traces where the other
/// is assumed: "05" behind a comma is rather the second half of "0,05", and "1," rather has an empty cell
/// behind it.
bool isHalfANumber(std::string_view cell, std::size_t index, Delimiter delimiter, char decimalSign) {
  if (decimalSign == ',' && (cell.starts_with(',') || cell.ends_with(','))) {
    return true;
  }
  return delimiter == Delimiter::comma && index > 0 && cell.size() > 1 && cell[0] == '0' &&
         std::isdigit(static_cast<unsigned char>(cell[1])) != 0 && cell.find(':') == cell.npos;
}

Row rowOf(const SampleLine& line, Delimiter delimiter, char decimalSign) {
  Row row{line, isComment(line.text, delimiter), {}, 0.0};
  if (row.comment) {
    return row;
  }
  const auto cells = splitCells(line.text, delimiter);
  if (!cells) {
    row.kinds.push_back(CellKind::words);
    return row;
  }
  for (std::size_t i = 0; i < cells->size(); ++i) {
    row.kinds.push_back(kindOf((*cells)[i], decimalSign));
    const bool counts = row.kinds.back() != CellKind::words && row.kinds.back() != CellKind::blank;
    row.numbers += counts && !isHalfANumber((*cells)[i], i, delimiter, decimalSign) ? 1.0 : 0.0;
  }
  return row;
}

/// The commonest number of cells among rows with numbers, the first seen of equals; 0 when there is none.
std::size_t usualLength(const std::vector<Row>& rows) {
  std::map<std::size_t, std::size_t> counts;
  std::size_t best = 0;
  for (const auto& row : rows) {
    if (!row.comment && row.hasNumber()) {
      ++counts[row.kinds.size()];
    }
  }
  for (const auto& row : rows) {
    const auto found = row.comment ? counts.end() : counts.find(row.kinds.size());
    if (found != counts.end() && (best == 0 || found->second > counts[best])) {
      best = found->first;
    }
  }
  return best;
}

std::vector<ColumnKind> columnKinds(const std::vector<Row>& rows, std::size_t firstRow,
                                    std::size_t length) {
  std::vector<std::array<std::size_t, 5>> tally(length);
  for (std::size_t r = firstRow; r < rows.size(); ++r) {
    if (!rows[r].comment && rows[r].kinds.size() == length) {
      for (std::size_t c = 0; c < length; ++c) {
        ++tally[c][static_cast<std::size_t>(rows[r].kinds[c])];
      }
    }
  }
  std::vector<ColumnKind> kinds;
  kinds.reserve(tally.size());
  for (const auto& [number, clock, missing, words, blank] : tally) {
    kinds.push_back(clock > number         ? ColumnKind::clock
                    : number + missing > 0 ? ColumnKind::number
                                           : ColumnKind::words);
  }
  return kinds;
}

/// How well the rows fit. The line or two directly above them may be words.
void weigh(const std::vector<Row>& rows, std::size_t firstRow, std::size_t length, FormatTrial& trial) {
  double numbers = 0.0;
  double cells = 0.0;
  double count = 0.0;
  double usual = 0.0;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (!rows[r].comment && (r + 2 < firstRow || r >= firstRow)) {
      numbers += rows[r].numbers;
      cells += static_cast<double>(rows[r].kinds.size());
      usual += rows[r].kinds.size() == length ? 1.0 : 0.0;
      count += 1.0;
    }
  }
  trial.numbers = numbers / cells;
  trial.usualRows = usual / count;
}

/// Whether the last column is only what a delimiter at the end of each row leaves behind.
bool lastColumnIsEmpty(const std::vector<Row>& rows, std::size_t length) {
  return length > 1 && std::all_of(rows.begin(), rows.end(), [&](const Row& row) {
           return row.comment || row.kinds.size() != length || row.kinds.back() == CellKind::blank;
         });
}

std::vector<std::string> headerCells(const Row& row, Delimiter delimiter) {
  return splitHeaderCells(row.line.text, delimiter).value_or(std::vector<std::string>());
}

/// The rows of words directly above the first row of numbers (comments between them set aside), topmost
/// first, as far as they have a cell for each column.
std::vector<std::size_t> rowsOfWords(const std::vector<Row>& rows, std::size_t firstRow, std::size_t length,
                                     FormatTrial& trial) {
  std::vector<std::size_t> found;
  for (auto r = firstRow; r-- > 0;) {
    if (rows[r].comment) {
      continue;
    }
    const auto cells = headerCells(rows[r], trial.format.delimiter).size();
    if (cells == trial.format.columns.size() || (cells == length && length > 1)) {
      found.insert(found.begin(), r);
      continue;
    }
    trial.headerDisagrees = found.empty();
    break;
  }
  return found;
}

/// Finds the header and the units among the rows of words, or in the comment directly above.
void layOutHead(const std::vector<Row>& rows, const std::vector<std::size_t>& words, std::size_t firstRow,
                TextFormat& format) {
  const auto isUnits = [&](std::size_t r) { return isUnitsRow(headerCells(rows[r], format.delimiter)); };
  if (!words.empty() && !isUnits(words.front())) {
    format.header = HeaderPlace::row;
    format.unitsRow = words.size() > 1 && isUnits(words[1]);
    return;
  }
  format.unitsRow = !words.empty();
  const auto below = words.empty() ? firstRow : words.front();
  const auto inComment = [&](std::size_t above) {
    return above <= below && rows[below - above].comment
               ? headersInComment(withoutCommentMark(rows[below - above].line.text), format.columns.size(),
                                  format.delimiter)
               : std::nullopt;
  };
  const auto nearest = inComment(1);
  if (!nearest) {
    return;
  }
  if (!format.unitsRow && isUnitsRow(*nearest)) {
    format.unitsRow = true;
    format.header = inComment(2) ? HeaderPlace::comment : HeaderPlace::none;
  } else {
    format.header = HeaderPlace::comment;
  }
}

}  // namespace

bool isMissingNumber(std::string_view cell) {
  std::string lower;
  for (const char c : cell.substr(0, 10)) {
    if (c != '+' && c != '-') {
      lower += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  constexpr std::array<std::string_view, 10> kMissing = {"nan", "inf", "infinity", "null",   "none",
                                                         "na",  "n/a", "#n/a",     "1.#inf", "1.#ind"};
  return std::find(kMissing.begin(), kMissing.end(), lower) != kMissing.end();
}

std::optional<FormatTrial> tryFormat(const std::vector<SampleLine>& sample, Delimiter delimiter,
                                     char decimalSign, std::optional<std::size_t> skippedLines) {
  std::vector<Row> rows;
  for (const auto& line : sample) {
    if ((line.number == 0 || line.number > skippedLines.value_or(0)) &&
        !isBlankLine(line.text, delimiter)) {
      rows.push_back(rowOf(line, delimiter, decimalSign));
    }
  }
  const std::size_t length = usualLength(rows);
  // A row of numbers that is too short is still a row, to be refused; a line of words is none.
  const auto first = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
    return row.line.number > 0 && !row.comment && row.hasNumber() &&
           (row.kinds.size() == length || !row.hasWords());
  });
  if (length == 0 || first == rows.end()) {
    return std::nullopt;
  }

  FormatTrial trial;
  trial.format.delimiter = delimiter;
  trial.format.decimalSign = decimalSign;
  const auto firstRow = static_cast<std::size_t>(first - rows.begin());
  weigh(rows, firstRow, length, trial);
  trial.format.columns = columnKinds(rows, firstRow, length);
  if (lastColumnIsEmpty(rows, length)) {
    trial.format.columns.pop_back();
  }
  auto words = rowsOfWords(rows, firstRow, length, trial);
  if (trial.headerDisagrees && !skippedLines && delimiter != Delimiter::blanks &&
      !rows[firstRow - 1].comment) {
    const auto found = headerCells(rows[firstRow - 1], delimiter).size();
    if (found > 1) {
      // A header of another length is a fault to be told, not a line to be passed over.
      words.push_back(firstRow - 1);
      trial.format.columns.resize(found, ColumnKind::number);
    }
  }
  const auto top = words.empty() ? firstRow : words.front();
  for (std::size_t r = 0; r < top; ++r) {
    trial.format.skippedLines = rows[r].comment ? trial.format.skippedLines : rows[r].line.number;
  }
  trial.format.skippedLines = std::max(trial.format.skippedLines, skippedLines.value_or(0));
  layOutHead(rows, words, firstRow, trial.format);
  return trial;
}

}  // namespace fettle
