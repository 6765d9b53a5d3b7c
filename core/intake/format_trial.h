#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "core/intake/text_format.h"

namespace fettle {

/// One line to try formats on; the lines from the beginning of the text have a number, others 0.
struct SampleLine {
  std::string_view text;
  std::size_t number = 0;
};

/// How well one way of writing tables explains the sample.
struct FormatTrial {
  TextFormat format;
  double numbers = 0.0;          ///< the part of the cells that are numbers
  double usualRows = 0.0;        ///< the part of the rows that have the usual length
  bool headerDisagrees = false;  ///< the line of words above the rows has another number of cells
};

/// Tries one delimiter and decimal sign. @return nothing when no line holds a number that way
std::optional<FormatTrial> tryFormat(const std::vector<SampleLine>& sample, Delimiter delimiter,
                                     char decimalSign, std::optional<std::size_t> skippedLines);

/// "nan", "inf", "null", "n/a": what loggers write where a number is missing.
bool isMissingNumber(std::string_view cell);

}  // namespace fettle
