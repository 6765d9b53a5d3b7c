#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// One touched point of the bed; z grows upward.
struct HeightPoint : TableRow {
  std::optional<double> x, y, z;
  void describe(FieldList& columns);
};

/// Heights as points, and as a net where they fill one.
struct BedHeights {
  std::vector<double> x, y, z;
  std::optional<GridReadings> grid;
  std::size_t repeated = 0;  ///< points left out because they repeat another one exactly

  std::size_t count() const { return z.size(); }
};

/// Throws Refusal for lines beyond 5 m.
BedHeights heightsOfGrid(const GridReadings& grid);

/// Points that stand on the crossings of straight lines to within 0.1 mm, one on each, are a net.
/// Throws Refusal when two points are within 0.1 mm of each other and differ in height.
BedHeights heightsOfPoints(const std::vector<HeightPoint>& points);

}  // namespace fettle
