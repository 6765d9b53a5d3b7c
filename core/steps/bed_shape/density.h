#pragma once
#include <optional>

#include "core/fields/readings.h"

namespace fettle {

/// How well every second line of a net foretells the lines between.
struct DensityAdvice {
  double error = 0;    ///< largest error of the foretold heights less 1.3 times the probe's scatter, ≥ 0
  double spacing = 0;  ///< proposed spacing of the lines
  int columns = 0, rows = 0;  ///< lines at that spacing over the same area, at least five
};

/// For nets with odd counts of 7 or more each way; none for others. Every second line is left out, heights
/// there are foretold by a not-a-knot bicubic spline through the rest. Taking the error to grow with the
/// square of the spacing, h is the widest with error·(h/h_half)² ≤ 0.02 mm and at least five lines each
/// way; h_half is the widest spacing left, in the direction where that is smaller.
std::optional<DensityAdvice> densityAdvice(const GridReadings& grid, double probeScatter);

}  // namespace fettle
