#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step.h"

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

/// How far and how repeatably each axis moves.
///
/// Accuracy figures after ISO 230-2 (see axis_travel/accuracy.h), scale and steps per mm (see
/// axis_travel/scale.h), parts other than configured (see axis_travel/parts.h), standard deviation and
/// range of repeated homings. Figures of a scale do not apply to a delta. Refused: a direction of 0, moves
/// of an axis that all have one target, or fewer or other moves than the straight line of the scale needs.
StepResult evaluate(const AxisTravelInputs& inputs, const StepContext& context);

Step axisTravelStep();

}  // namespace fettle
