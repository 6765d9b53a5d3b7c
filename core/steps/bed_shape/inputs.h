#pragma once
#include <optional>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// One touched point of the bed; z grows upward.
struct HeightPoint : TableRow {
  std::optional<double> x, y, z;
  void describe(FieldList& columns);
};

struct BedShapeInputs {
  GridReadings grid;
  std::vector<HeightPoint> points;
  std::optional<double> bedTemperature, soakMinutes;
  void describe(FieldList& fields);
};

/// Where the probe can have touched, mm either way.
inline constexpr double farthestPlace = 5000;

}  // namespace fettle
