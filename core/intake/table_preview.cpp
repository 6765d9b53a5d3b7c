#include "core/intake/table_preview.h"

#include <utility>

#include "core/intake/detect_format.h"
#include "core/intake/table_head.h"
#include "core/intake/text_encoding.h"
#include "core/intake/utf8.h"

namespace fettle {
namespace {

std::vector<std::string> skippedLinesOf(std::string_view text, const TextFormat& format) {
  std::vector<std::string> skipped;
  LineReader lines(text);
  for (auto line = lines.next(); line && line->number <= format.skippedLines; line = lines.next()) {
    if (!isComment(line->text, format.delimiter) && !isBlankLine(line->text, format.delimiter)) {
      skipped.push_back(validUtf8(line->text));
    }
  }
  return skipped;
}

void takeRows(const TableHead& head, std::size_t most, TablePreview& preview) {
  LineReader lines(head.rows, head.firstLine);
  while (preview.rows.size() < most) {
    const auto line = lines.next();
    if (!line) {
      return;
    }
    if (isComment(line->text, preview.format.delimiter) ||
        isBlankLine(line->text, preview.format.delimiter)) {
      continue;
    }
    auto cells = splitCells(line->text, preview.format.delimiter)
                     .value_or(std::vector<std::string>{std::string(line->text)});
    for (auto& cell : cells) {
      cell = validUtf8(cell);
    }
    preview.rows.push_back(std::move(cells));
    preview.rowLines.push_back(line->number);
  }
}

}  // namespace

Intake<TablePreview> previewTable(std::string_view bytes, const std::vector<WantedColumn>& wanted,
                                  const ColumnChoice& choice, const FormatHints& hints, std::size_t rows) {
  auto format = detectFormat(bytes, hints);
  if (!format) {
    return tl::unexpected(format.error());
  }
  const auto text = PlainText::from(bytes);
  if (!text) {
    return tl::unexpected(text.error());
  }
  auto head = readHead(text->view(), *format);
  if (!head) {
    return tl::unexpected(head.error());
  }
  TablePreview preview;
  preview.format = *std::move(format);
  preview.skipped = skippedLinesOf(text->view(), preview.format);
  takeRows(*head, rows, preview);
  preview.comments = std::move(head->comments);
  for (std::size_t c = 0; c < preview.format.columns.size(); ++c) {
    preview.heads.push_back(
        {std::move(head->headers[c]), std::move(head->units[c]), preview.format.columns[c]});
  }
  preview.suggested = suggestColumns(preview.heads, wanted, choice);
  return preview;
}

std::string shapeSignature(const TextFormat& format, const std::vector<ColumnHead>& heads) {
  std::string out;
  out += delimiterCharacter(format.delimiter);
  out += format.decimalSign;
  out += std::to_string(heads.size());
  for (const auto& head : heads) {
    out += '|';
    out += head.kind == ColumnKind::clock ? "clock:" : head.kind == ColumnKind::words ? "words:" : "";
    out += head.header + (head.unit.empty() ? "" : " " + head.unit);
  }
  return out;
}

}  // namespace fettle
