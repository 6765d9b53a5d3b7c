#pragma once
#include <optional>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// Carriage coordinates with the nozzle over a mark, and with the probe tip over the same mark.
struct TouchMark : TableRow {
  std::optional<double> nozzleX, nozzleY, probeX, probeY;
  void describe(FieldList& columns);
};

/// The offset measured at the tool head itself.
struct DirectOffset : TableRow {
  std::optional<double> x, y;
  void describe(FieldList& columns);
};

struct ProbePositionInputs {
  std::vector<TouchMark> marks;
  std::vector<DirectOffset> direct;
  double margin = 5.0;  ///< mm kept free along the edge of the bed
  std::optional<double> probingMinX, probingMaxX, probingMinY, probingMaxY, probingColumns, probingRows;
  void describe(FieldList& fields);
};

}  // namespace fettle
