#pragma once
#include <optional>
#include <vector>

#include "core/maths/straight_line.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/chart.h"
#include "core/steps/temperature_sensor/search.h"

namespace fettle {

/// What the charts of a sensor show.
struct SensorPicture {
  std::vector<SensorPoint> points;  ///< excluded ones too
  std::vector<double> expanded;     ///< U of the deviations of those that count, °C
  std::optional<maths::StraightLine> line;
  std::optional<SensorCurve> configured;
  std::vector<LikelyCurve> likely;  ///< those better than the configured curve, best first
  Tolerance tolerance;
};

/// The deviations with the limits and what the line and each likely curve make of them, and the same as
/// reference over indication.
std::vector<Chart> sensorCharts(const SensorPicture& picture);

}  // namespace fettle
