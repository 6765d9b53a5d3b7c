#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/intake_error.h"
#include "core/intake/text_lines.h"

namespace fettle {

/// Where the names of the columns stand: nowhere, in a row of their own, or in the comment line directly
/// above the first row of numbers.
enum class HeaderPlace { none, row, comment };

enum class ColumnKind { number, clock, words };

/// How a text table is written. A plain value: it can be compared, remembered and overridden.
struct TextFormat {
  Delimiter delimiter = Delimiter::comma;
  char decimalSign = '.';
  HeaderPlace header = HeaderPlace::none;
  bool unitsRow = false;         ///< a line of units follows the header (or stands alone)
  std::size_t skippedLines = 0;  ///< lines at the top that belong to no table
  std::vector<ColumnKind> columns;

  bool operator==(const TextFormat&) const = default;
};

/// What is known or wished beforehand; everything left open is detected.
struct FormatHints {
  std::optional<Delimiter> delimiter;
  std::optional<char> decimalSign;
  std::optional<std::size_t> skippedLines;
};

}  // namespace fettle
