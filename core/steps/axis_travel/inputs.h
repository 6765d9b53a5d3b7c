#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// One approach to a target and where the axis came to rest.
struct AxisMove : TableRow {
  std::string axis;
  std::optional<double> target, direction, measured;
  void describe(FieldList& columns);
};

/// Where an axis stood after one homing.
struct AxisHoming : TableRow {
  std::string axis;
  std::optional<double> position;
  void describe(FieldList& columns);
};

struct AxisTravelInputs {
  std::vector<AxisMove> moves;
  std::vector<AxisHoming> homings;
  void describe(FieldList& fields);
};

/// x, y and z, as choices.
std::vector<Choice> travelAxes();

}  // namespace fettle
