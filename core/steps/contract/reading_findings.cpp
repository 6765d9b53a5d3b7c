#include "core/steps/contract/reading_findings.h"

#include <cmath>
#include <string>

#include "core/maths/outliers.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"

namespace fettle {

void noteSingleReading(StepResult& result, const std::string& what) {
  result.addFinding(
      "single-reading", Severity::note,
      say(Text::tr("{0} rests on one reading: U holds the instrument alone, not the scatter. Two "
                   "more readings would show it."),
          what));
}

void noteOutliers(StepResult& result, std::span<const double> values, std::span<const std::size_t> rows,
                  double resolution, const std::string& what, const std::string& unit) {
  const auto marked = maths::outlierIndices(values, resolution / std::sqrt(12.0));
  if (marked.empty()) {
    return;
  }
  const int decimals = resolution > 0 ? decimalsFor(resolution, 1) : 3;
  std::string numbers;
  std::string readings;
  for (const std::size_t index : marked) {
    const std::string comma = readings.empty() ? "" : ", ";
    numbers += comma + std::to_string(rows[index]);
    readings += comma + formatFixed(values[index], decimals);
  }
  if (const std::string shown = displayUnit(unit); !shown.empty()) {
    readings += " " + shown;
  }
  result.addFinding(
      "outlier", Severity::caution,
      marked.size() == 1
          ? say(Text::tr("Row {0}: {1} {2} lies far from the others. It counts; exclude the row with "
                         "a reason if you know one."),
                numbers, what, readings)
          : say(Text::tr("Rows {0}: {1} {2} lie far from the others. They count; exclude a row with "
                         "a reason if you know one."),
                numbers, what, readings));
}

}  // namespace fettle
