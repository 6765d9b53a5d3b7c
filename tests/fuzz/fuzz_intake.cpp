/// Any bytes at all: reading may refuse them with a sentence, but may not crash, hang, or let through a
/// value that is not finite.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/intake/capture_text.h"
#include "core/intake/height_grid.h"
#include "core/intake/table_preview.h"
#include "core/measure/number_text.h"

namespace {

using namespace fettle;

void demand(bool holds) {
  if (!holds) {
    std::abort();
  }
}

void demandFinite(const std::vector<double>& values) {
  for (const double value : values) {
    demand(std::isfinite(value));
  }
}

void demandSentence(const IntakeError& error) {
  demand(!error.sentence.empty() && error.sentence.size() < 20000);
}

const std::vector<WantedColumn>& wantedColumns() {
  static const std::vector<WantedColumn> wanted = {{"time_s", "time", "s", true, false, {}},
                                                   {"ax", "acceleration in x", "mm/s2", true, false, {}},
                                                   {"temp_C", "temperature", "C", false, false, {}},
                                                   {"side", "side", "", false, true, {}}};
  return wanted;
}

void tryCapture(std::string_view bytes) {
  ColumnChoice choice;
  choice.inOrder = true;
  const auto capture = readCapture(bytes, wantedColumns(), choice);
  if (!capture) {
    demandSentence(capture.error());
    return;
  }
  for (const auto& [key, values] : capture->columns) {
    demand(values.size() == capture->rows());
    demandFinite(values);
  }
}

void tryTable(std::string_view bytes) {
  const auto preview = previewTable(bytes, wantedColumns());
  if (!preview) {
    demandSentence(preview.error());
    return;
  }
  demand(!shapeSignature(preview->format, preview->heads).empty());
  const auto table = readTable(bytes, preview->format, {true, {}});
  if (!table) {
    demandSentence(table.error());
    return;
  }
  for (const auto& column : table->columns) {
    demand((column.kind == ColumnKind::words ? column.words.size() : column.values.size()) ==
           table->rows());
    demandFinite(column.values);
  }
  demand(table->rows() == 0 || table->lines.lineOf(table->rows() - 1) >= table->rows());
}

void tryGrid(std::string_view bytes) {
  GridOptions options;
  options.useSuggested = true;
  const auto grid = readGrid(bytes, options);
  if (!grid) {
    demandSentence(grid.error());
    return;
  }
  demand(grid->z.size() == grid->y.size() && grid->x.front() < grid->x.back() &&
         grid->y.front() < grid->y.back());
  for (const auto& row : grid->z) {
    demand(row.size() == grid->x.size());
    demandFinite(row);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  tryCapture(bytes);
  tryTable(bytes);
  tryGrid(bytes);
  const auto typed = numberFromKeyboard(bytes);
  demand(typed ? std::isfinite(*typed) : !typed.error().empty());
  return 0;
}
