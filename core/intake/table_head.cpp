#include "core/intake/table_head.h"

#include <algorithm>
#include <array>

#include "core/intake/utf8.h"
#include "core/measure/number_text.h"
#include "core/measure/unit.h"

namespace fettle {
namespace {

bool isInBrackets(std::string_view cell) {
  return (cell.starts_with('[') && cell.ends_with(']')) || (cell.starts_with('(') && cell.ends_with(')'));
}

std::vector<std::string> fitted(std::vector<std::string> cells, std::size_t columns) {
  cells.resize(columns);
  for (auto& cell : cells) {
    cell = validUtf8(cell);
  }
  return cells;
}

/// A header row with more words than columns would lose words; only an empty last cell may go.
bool fits(const std::vector<std::string>& cells, std::size_t columns) {
  return cells.size() == columns || (cells.size() == columns + 1 && cells.back().empty()) ||
         cells.size() + 1 == columns;
}

void takeHeadersFromComments(TableHead& head, const TextFormat& format, bool unitsTaken) {
  auto above = head.comments.size();
  if (format.unitsRow && !unitsTaken && above > 0) {
    head.units = headersInComment(head.comments[--above], format.columns.size(), format.delimiter)
                     .value_or(std::vector<std::string>());
  }
  if (above > 0) {
    head.headers = headersInComment(head.comments[above - 1], format.columns.size(), format.delimiter)
                       .value_or(std::vector<std::string>());
  }
}

}  // namespace

bool isUnitsRow(const std::vector<std::string>& cells) {
  bool any = false;
  for (const auto& cell : cells) {
    if (cell.empty() || cell == "-") {
      continue;
    }
    if (cell == "1" || !(isInBrackets(cell) || unitFromText(cell))) {
      return false;
    }
    any = true;
  }
  return any;
}

std::optional<std::vector<std::string>> headersInComment(std::string_view comment, std::size_t columns,
                                                         Delimiter delimiter) {
  for (const auto tried :
       {delimiter, Delimiter::tab, Delimiter::semicolon, Delimiter::comma, Delimiter::blanks}) {
    auto cells = splitHeaderCells(comment, tried);
    if (!cells || cells->size() != columns) {
      continue;
    }
    const bool words = std::none_of(cells->begin(), cells->end(), [](const auto& cell) {
      return numberFromText(cell, '.') || numberFromText(cell, ',');
    });
    if (words &&
        std::any_of(cells->begin(), cells->end(), [](const auto& cell) { return !cell.empty(); })) {
      return cells;
    }
  }
  return std::nullopt;
}

Intake<TableHead> readHead(std::string_view text, const TextFormat& format) {
  const auto columns = format.columns.size();
  TableHead head;
  bool headerTaken = format.header != HeaderPlace::row;
  bool unitsTaken = !format.unitsRow;
  LineReader lines(text);
  while (true) {
    head.rows = lines.rest();
    head.firstLine = lines.nextNumber();
    const auto line = lines.next();
    if (!line) {
      break;
    }
    if (line->number <= format.skippedLines || isBlankLine(line->text, format.delimiter)) {
      continue;
    }
    if (isComment(line->text, format.delimiter)) {
      head.comments.push_back(validUtf8(withoutCommentMark(line->text)));
      continue;
    }
    if (headerTaken && unitsTaken) {
      break;
    }
    auto cells = splitHeaderCells(line->text, format.delimiter);
    if (!cells) {
      return refusal::openQuote(line->number);
    }
    if (headerTaken && !isUnitsRow(*cells)) {
      break;  // the units stand in a comment
    }
    if (!fits(*cells, columns)) {
      return refusal::cellCount(line->number, cells->size(), columns, false);
    }
    (headerTaken ? head.units : head.headers) = fitted(*std::move(cells), columns);
    (headerTaken ? unitsTaken : headerTaken) = true;
  }
  if (format.header == HeaderPlace::comment) {
    takeHeadersFromComments(head, format, unitsTaken);
  }
  head.headers = fitted(std::move(head.headers), columns);
  head.units = fitted(std::move(head.units), columns);
  return head;
}

}  // namespace fettle
