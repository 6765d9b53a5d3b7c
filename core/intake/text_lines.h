#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fettle {

/// What parts the columns of a text table. `blanks` is any run of spaces and tabs.
enum class Delimiter { comma, semicolon, tab, blanks };

char delimiterCharacter(Delimiter delimiter);

/// The characters that end a line of this text: '\n' (a '\r' before it is cut off), or '\r' where no '\n'
/// is.
char lineEndOf(std::string_view text);

struct TextLine {
  std::string_view text;   ///< without its line end
  std::size_t number = 0;  ///< from 1
};

/// Walks over the lines of a text without copying.
class LineReader {
 public:
  explicit LineReader(std::string_view text, std::size_t firstNumber = 1);
  std::optional<TextLine> next();
  std::string_view rest() const { return m_rest; }
  std::size_t nextNumber() const { return m_number; }

 private:
  std::string_view m_rest;
  std::size_t m_number;
  char m_lineEnd;
};

/// Whether a line holds nothing but blanks and delimiters, as the empty rows of a spreadsheet do.
bool isBlankLine(std::string_view line, Delimiter delimiter);

/// Lines that begin with `#`, `%`, `//`, and `;` unless that parts the columns, are comments.
bool isComment(std::string_view line, Delimiter delimiter);

/// The text of a comment line behind its mark.
std::string_view withoutCommentMark(std::string_view line);

/// The cells of a line, trimmed, quotation marks taken off ("" inside them is one).
/// @return nothing when a quotation mark is not closed
std::optional<std::vector<std::string>> splitCells(std::string_view line, Delimiter delimiter);

/// Header cells: as splitCells, but in a line parted by blanks a unit in brackets stays with its name
/// ("time [s]  ax [mm/s2]").
std::optional<std::vector<std::string>> splitHeaderCells(std::string_view line, Delimiter delimiter);

}  // namespace fettle
