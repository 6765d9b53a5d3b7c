#include "core/intake/text_lines.h"

#include <algorithm>

#include "core/measure/number_text.h"

namespace fettle {
namespace {

bool isBlank(char c) {
  return c == ' ' || c == '\t';
}

bool parts(char c, Delimiter delimiter) {
  return delimiter == Delimiter::blanks ? isBlank(c) : c == delimiterCharacter(delimiter);
}

/// Takes the cell at the front of `rest`, up to its delimiter. @return false when a quotation mark stays
/// open
bool takeCell(std::string_view& rest, Delimiter delimiter, std::string& cell) {
  cell.clear();
  std::size_t i = 0;
  while (i < rest.size() && rest[i] == ' ') {
    ++i;
  }
  if (i < rest.size() && rest[i] == '"') {
    for (++i;; ++i) {
      if (i >= rest.size()) {
        return false;
      }
      if (rest[i] == '"') {
        if (i + 1 >= rest.size() || rest[i + 1] != '"') {
          break;
        }
        ++i;
      }
      cell += rest[i];
    }
    rest.remove_prefix(i + 1);
  }
  // Without quotation marks this is the whole cell; behind them it is nothing, or rubbish that is kept.
  const auto end = static_cast<std::size_t>(
      std::find_if(rest.begin(), rest.end(), [&](char c) { return parts(c, delimiter); }) - rest.begin());
  cell += rest.substr(0, end);
  cell = std::string(trimmed(cell));
  rest.remove_prefix(end);
  return true;
}

}  // namespace

char delimiterCharacter(Delimiter delimiter) {
  switch (delimiter) {
    case Delimiter::comma:
      return ',';
    case Delimiter::semicolon:
      return ';';
    case Delimiter::tab:
      return '\t';
    case Delimiter::blanks:
      break;
  }
  return ' ';
}

char lineEndOf(std::string_view text) {
  return text.find('\n') == text.npos ? '\r' : '\n';
}

LineReader::LineReader(std::string_view text, std::size_t firstNumber)
    : m_rest(text), m_number(firstNumber), m_lineEnd(lineEndOf(text)) {}

std::optional<TextLine> LineReader::next() {
  if (m_rest.empty()) {
    return std::nullopt;
  }
  const auto end = std::min(m_rest.find(m_lineEnd), m_rest.size());
  auto line = m_rest.substr(0, end);
  m_rest.remove_prefix(std::min(end + 1, m_rest.size()));
  if (line.ends_with('\r')) {
    line.remove_suffix(1);
  }
  return TextLine{line, m_number++};
}

bool isBlankLine(std::string_view line, Delimiter delimiter) {
  const char blank[] = {' ', '\t', '\f', '\v', '\r', delimiterCharacter(delimiter), '\0'};
  return line.find_first_not_of(blank) == line.npos;
}

bool isComment(std::string_view line, Delimiter delimiter) {
  line = trimmed(line);
  return line.starts_with('#') || line.starts_with('%') || line.starts_with("//") ||
         (line.starts_with(';') && delimiter != Delimiter::semicolon);
}

std::string_view withoutCommentMark(std::string_view line) {
  line = trimmed(line);
  const auto first = line.find_first_not_of("#%/;");
  return first == line.npos ? std::string_view() : trimmed(line.substr(first));
}

std::optional<std::vector<std::string>> splitCells(std::string_view line, Delimiter delimiter) {
  const bool blanks = delimiter == Delimiter::blanks;
  std::vector<std::string> cells;
  auto rest = blanks ? trimmed(line) : line;
  std::string cell;
  while (true) {
    if (!takeCell(rest, delimiter, cell)) {
      return std::nullopt;
    }
    cells.push_back(cell);
    if (rest.empty()) {
      return cells;
    }
    rest.remove_prefix(1);
    while (blanks && !rest.empty() && isBlank(rest.front())) {
      rest.remove_prefix(1);
    }
  }
}

std::optional<std::vector<std::string>> splitHeaderCells(std::string_view line, Delimiter delimiter) {
  auto cells = splitCells(line, delimiter);
  if (!cells || delimiter != Delimiter::blanks) {
    return cells;
  }
  std::vector<std::string> joined;
  for (auto& cell : *cells) {
    const bool isUnit = cell.starts_with('[') || cell.starts_with('(');
    if (isUnit && !joined.empty() && !joined.back().ends_with(']') && !joined.back().ends_with(')')) {
      joined.back() += " " + cell;
    } else {
      joined.push_back(std::move(cell));
    }
  }
  return joined;
}

}  // namespace fettle
