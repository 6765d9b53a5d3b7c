#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/column_match.h"
#include "core/intake/text_format.h"

namespace fettle {

/// What a dialog shows before a table is read.
struct TablePreview {
  TextFormat format;
  std::vector<ColumnHead> heads;
  std::vector<std::string> skipped;            ///< lines at the top that are no part of the table
  std::vector<std::string> comments;           ///< comment lines above the rows
  std::vector<std::vector<std::string>> rows;  ///< the first rows, as written
  std::vector<std::size_t> rowLines;           ///< their line numbers
  std::vector<ColumnMatch> suggested;          ///< what was recognised
};

/// The first rows of a text with the format as detected (after `hints`) and the columns as recognised. Rows
/// with faults are shown as they are; only reading refuses them.
Intake<TablePreview> previewTable(std::string_view bytes, const std::vector<WantedColumn>& wanted,
                                  const ColumnChoice& choice = {}, const FormatHints& hints = {},
                                  std::size_t rows = 20);

/// One word for the shape of a text: how it is written, how many columns, which headers. Texts of the same
/// shape can use the same column choice again.
std::string shapeSignature(const TextFormat& format, const std::vector<ColumnHead>& heads);

}  // namespace fettle
