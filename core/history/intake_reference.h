#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field.h"
#include "core/intake/column_map.h"
#include "core/intake/height_grid.h"

namespace fettle {

// A reference to a file in the inputs of a step, {"file", "sha256", "columns", "units", "format", ...}, as
// intake understands it.

/// Calls `visit` for every reference inside inputs; it may change those of inputs that are not const.
template <typename Inputs, typename Visit>
void eachFileReference(Inputs& inputs, const Visit& visit) {
  if (inputs.is_object() && inputs.contains("file") && inputs["file"].is_string()) {
    visit(inputs);
  } else if (inputs.is_structured()) {
    for (auto& part : inputs) {
      eachFileReference(part, visit);
    }
  }
}

/// What is wrong with the form of a reference, in one clause; nothing for one that can be followed.
std::optional<std::string> referenceProblem(const Json& reference);

/// The columns a field asks of a file. Columns of a table that the file leaves out stay blank; one more of
/// a table says which rows are excluded and why.
std::vector<WantedColumn> wantedColumns(const Field& field);

/// "columns" {key: header, number from 1 or null to leave it out} and "units" {key: unit}.
ColumnChoice columnChoice(const Json& reference);

/// "format" {"delimiter": "comma", "semicolon", "tab" or "blanks", "decimal_sign": "." or ",",
/// "skipped_lines": number}; what is left out is detected.
FormatHints formatHints(const Json& reference);

/// "x", "y", "columns_first", "back_row_first", "right_to_left" and the format of a grid.
GridOptions gridOptions(const Json& reference);

}  // namespace fettle
