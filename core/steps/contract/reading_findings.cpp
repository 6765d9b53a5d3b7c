#include "core/steps/contract/reading_findings.h"

#include <cmath>

#include "core/maths/outliers.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"

namespace fettle {

void noteSingleReading(StepResult& result, const std::string& what) {
  result.find("single-reading", Severity::note,
              say(Text::tr("{0} rests on one reading: U holds the instrument alone, not the scatter. Two "
                           "more readings would show it."),
                  what));
}

void noteOutliers(StepResult& result, std::span<const double> values, std::span<const std::size_t> rows,
                  double resolution, const std::string& what, const std::string& unit) {
  const int decimals = resolution > 0 ? decimalsFor(resolution, 1) : 3;
  const auto outliers = maths::outlierIndices(values, resolution / std::sqrt(12.0));
  std::string numbers, readings;
  for (const std::size_t index : outliers) {
    numbers += (numbers.empty() ? "" : ", ") + std::to_string(rows[index]);
    readings += (readings.empty() ? "" : ", ") + formatFixed(values[index], decimals);
  }
  if (outliers.empty()) {
    return;
  }
  readings += " " + displayUnit(unit);
  result.find("outlier", Severity::caution,
              outliers.size() == 1
                  ? say(Text::tr("Row {0}: {1} {2} lies far from the others. It counts; exclude the row "
                                 "with a reason if you know one."),
                        numbers, what, readings)
                  : say(Text::tr("Rows {0}: {1} {2} lie far from the others. They count; exclude a row "
                                 "with a reason if you know one."),
                        numbers, what, readings));
}

}  // namespace fettle
