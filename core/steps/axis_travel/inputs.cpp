#include "core/steps/axis_travel/inputs.h"

#include "core/measure/text.h"

namespace fettle {

std::vector<Choice> travelAxes() {
  return {{"x", Text::tr("x")}, {"y", Text::tr("y")}, {"z", Text::tr("z")}};
}

void AxisMove::describe(FieldList& columns) {
  columns.choice("axis", axis, Text::tr("Axis"), travelAxes()).required();
  columns.number("target_mm", target, Text::tr("Target"), "mm")
      .bounds(-5000, 5000)
      .required()
      .help(Text::tr("Commanded position."))
      .alsoNamed({"target", "commanded"});
  columns.number("direction", direction, Text::tr("Direction"), "1")
      .bounds(-1, 1)
      .whole()
      .required()
      .help(Text::tr("1: the target was approached towards plus; -1: towards minus."))
      .alsoNamed({"direction"});
  columns.number("measured_mm", measured, Text::tr("Measured"), "mm")
      .bounds(-5000, 5000)
      .required()
      .help(Text::tr("Position from one datum that stays where it is."))
      .readWith(instruments::caliper())
      .alsoNamed({"measured", "actual", "position"});
}

void AxisHoming::describe(FieldList& columns) {
  columns.choice("axis", axis, Text::tr("Axis"), travelAxes()).required();
  columns.number("mm", position, Text::tr("Reading"), "mm")
      .bounds(-5000, 5000)
      .required()
      .help(Text::tr("Indicator at one place after each homing."))
      .readWith(instruments::dialIndicator())
      .alsoNamed({"reading", "indicator"});
}

void AxisTravelInputs::describe(FieldList& fields) {
  fields.table("moves", moves, Text::tr("Moves"))
      .required()
      .help(Text::tr("Five targets or more along the travel, each approached from both sides, five runs."));
  fields.table("homings", homings, Text::tr("Homings"))
      .help(Text::tr("The same place after each of ten homings or so."));
}

}  // namespace fettle
