#pragma once
#include <optional>
#include <vector>

#include "core/maths/straight_line.h"
#include "core/measure/verdict.h"
#include "core/steps/temperature_sensor/search.h"

namespace fettle {

/// What the charts of a sensor show.
struct SensorPicture {
  std::vector<SensorPoint> points;  ///< excluded ones too
  std::optional<maths::StraightLine> line;
  std::optional<SensorCurve> configured;
  std::vector<LikelyCurve> likely;  ///< those better than the configured curve, best first
  Tolerance tolerance;
};

/// Reference over indication with what each likely curve would have shown, and the deviations.
std::vector<Chart> sensorCharts(const SensorPicture& picture);

}  // namespace fettle
