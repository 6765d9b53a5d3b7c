#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/text_format.h"

namespace fettle {

/// What stands above the rows of numbers.
struct TableHead {
  std::vector<std::string> headers;   ///< one per column, as written; empty where there is none
  std::vector<std::string> units;     ///< of the units row, one per column; empty where there is none
  std::vector<std::string> comments;  ///< comment lines above the rows, without their mark
  std::string_view rows;              ///< the text from the first row on
  std::size_t firstLine = 1;          ///< its line number
};

/// Reads everything above the rows of a table. The text must outlive the result.
Intake<TableHead> readHead(std::string_view text, const TextFormat& format);

/// Whether every cell is a unit word or in brackets (or empty, or a dash), and at least one is.
bool isUnitsRow(const std::vector<std::string>& cells);

/// The cells of a comment line as headers for so many columns; the comment may part its words otherwise
/// than the rows do. @return nothing when it has another number of words or holds numbers
std::optional<std::vector<std::string>> headersInComment(std::string_view comment, std::size_t columns,
                                                         Delimiter delimiter);

}  // namespace fettle
