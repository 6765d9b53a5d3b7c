#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/column_map.h"
#include "core/measure/capture.h"

namespace fettle {

struct CaptureRules {
  std::string timeKey = "time_s";
  std::size_t fewestRows = 2;
};

/// Makes a capture of the columns that were read: checks that time rises from row to row and that there are
/// enough rows, and shifts time so that it begins at 0. Anything subtler (gaps, jitter, clipping) is judged
/// by the step that uses the capture. A refusal names the line of the text. Name and hash are left to the
/// caller.
Intake<Capture> makeCapture(KeyedColumns columns, const CaptureRules& rules = {});

/// Text to capture in one go: format, columns, units, checks.
Intake<Capture> readCapture(std::string_view bytes, const std::vector<WantedColumn>& wanted,
                            const ColumnChoice& choice = {}, const CaptureRules& rules = {},
                            const FormatHints& hints = {}, const Progress& progress = {});

}  // namespace fettle
