#include "core/intake/capture_text.h"

#include <algorithm>
#include <utility>

namespace fettle {

Intake<Capture> makeCapture(KeyedColumns columns, const CaptureRules& rules) {
  Capture capture;
  for (auto& column : columns.columns) {
    if (!column.blankRows.empty()) {
      return refusal::emptyCell(
          {columns.lines.lineOf(column.blankRows.front()), column.column + 1, column.key});
    }
    if (column.words.empty()) {
      capture.columns.emplace(std::move(column.key), std::move(column.values));
    }
  }
  const auto time = capture.columns.find(rules.timeKey);
  if (time == capture.columns.end()) {
    return refusal::noTimeColumn(rules.timeKey);
  }
  auto& seconds = time->second;
  if (seconds.size() < std::max<std::size_t>(rules.fewestRows, 1)) {
    return refusal::tooFewRows(seconds.size(), rules.fewestRows);
  }
  // Compared as written, since two huge times may become equal by shifting.
  for (std::size_t row = 1; row < seconds.size(); ++row) {
    if (!(seconds[row] > seconds[row - 1])) {
      return refusal::timeNotRising(columns.lines.lineOf(row), seconds[row - 1], seconds[row]);
    }
  }
  const double start = seconds.front();
  std::transform(seconds.begin(), seconds.end(), seconds.begin(), [&](double t) { return t - start; });
  return capture;
}

Intake<Capture> readCapture(std::string_view bytes, const std::vector<WantedColumn>& wanted,
                            const ColumnChoice& choice, const CaptureRules& rules, const FormatHints& hints,
                            const Progress& progress) {
  auto columns = readColumns(bytes, wanted, choice, hints, {false, progress});
  if (!columns) {
    return tl::unexpected(columns.error());
  }
  return makeCapture(*std::move(columns), rules);
}

}  // namespace fettle
