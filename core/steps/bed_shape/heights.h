#pragma once
#include <optional>
#include <vector>

#include "core/steps/bed_shape/inputs.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// Heights as points, and as a net where they fill one.
struct BedHeights {
  std::vector<double> x, y, z;
  std::optional<GridReadings> grid;
  std::optional<GridReadings> withBlanks;  ///< the grid as entered, NaN where a cell is blank: for maps
  std::size_t blankCells = 0;
  std::size_t repeated = 0;             ///< points left out because they repeat another one exactly
  std::vector<Refusal> contradictions;  ///< pairs of points, both left out
  std::string field;                    ///< key of the field they come from

  std::size_t count() const { return z.size(); }
};

/// Blank cells are left out: what remains is points, and a net only where they fill one. Throws Refusal for
/// lines beyond 5 m.
BedHeights heightsOfGrid(const GridReadings& grid);

/// Points that stand on the crossings of straight lines to within 0.1 mm, one on each, are a net. Of two
/// points within 0.1 mm of each other that differ in height nobody knows which holds: neither counts.
BedHeights heightsOfPoints(const std::vector<HeightPoint>& points);

}  // namespace fettle
