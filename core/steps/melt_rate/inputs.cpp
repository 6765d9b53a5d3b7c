#include "core/steps/melt_rate/inputs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/measure/text.h"

namespace fettle {

double GradedPiece::stairAt(double h) const {
  constexpr double rounding = 1e-9;  // 0.3/0.1 is a little less than 3
  return std::clamp(std::floor(h * *stairs / *height + rounding), 0.0, *stairs - 1);
}

double GradedPiece::valueOfStair(double stair) const {
  return *bottomValue + (*topValue - *bottomValue) * (stair + 0.5) / *stairs;
}

double GradedPiece::valueAt(double h) const {
  return stairs ? valueOfStair(stairAt(h)) : *bottomValue + (*topValue - *bottomValue) * h / *height;
}

double LineSize::area() const {
  return (*width - *height) * *height + std::numbers::pi * *height * *height / 4;
}

void FlowStep::describe(FieldList& columns) {
  columns.number("flow_mm3_s", flow, Text::tr("Flow"), "mm3/s")
      .bounds(0.01, 1000)
      .required()
      .help(Text::tr("Commanded flow."))
      .alsoNamed({"flow", "commanded flow"});
  columns.number("delivered", delivered, Text::tr("Delivered"), "1")
      .bounds(0, 2)
      .help(
          Text::tr("Part of what was commanded that came out, 1 for all; blank when the mass is weighed."))
      .alsoNamed({"delivered", "fraction"});
  columns.number("mass_g", mass, Text::tr("Mass"), "g")
      .bounds(0, 1000)
      .help(Text::tr("Of what came out."))
      .readWith(instruments::milligramScale())
      .alsoNamed({"mass", "weight"});
  columns.number("volume_mm3", volume, Text::tr("Volume"), "mm3")
      .bounds(1, 1e6)
      .folded()
      .help(Text::tr("Commanded in this step; blank: the one volume for all."))
      .alsoNamed({"volume", "commanded volume"});
  columns.number("density_g_cm3", density, Text::tr("Density"), "g/cm3")
      .bounds(0.1, 20)
      .folded()
      .help(Text::tr("Of this step's filament; blank: the one density for all."))
      .alsoNamed({"density"});
}

void GradedPiece::describe(FieldList& columns) {
  columns.number("bottom_value", bottomValue, Text::tr("Flow at the bottom"), "mm3/s")
      .bounds(0, 1000)
      .required();
  columns.number("top_value", topValue, Text::tr("Flow at the top"), "mm3/s").bounds(0, 1000).required();
  columns.number("height_mm", height, Text::tr("Height of the piece"), "mm").bounds(0.1, 2000).required();
  columns.number("stairs", stairs, Text::tr("Stairs"), "1")
      .bounds(2, 1000)
      .whole()
      .help(Text::tr("How many equal stairs the piece has; blank: the flow rises evenly. Needed when only "
                     "the bad height was noted."));
}

void BadHeight::describe(FieldList& columns) {
  columns.number("last_good_mm", lastGood, Text::tr("Last good height"), "mm")
      .bounds(0, 2000)
      .help(Text::tr("Blank: the stair below the bad height."));
  columns.number("bad_height_mm", badHeight, Text::tr("Bad height"), "mm")
      .bounds(0, 2000)
      .required()
      .help(Text::tr("Where walls first turn thin, matt or torn."));
}

void LineSize::describe(FieldList& columns) {
  columns.number("width_mm", width, Text::tr("Line width"), "mm").bounds(0.05, 10).required();
  columns.number("height_mm", height, Text::tr("Layer height"), "mm").bounds(0.01, 10).required();
}

void MeltRateInputs::describe(FieldList& fields) {
  fields.number("temperature_C", temperature, Text::tr("Nozzle temperature"), "C")
      .bounds(100, 600)
      .carriesOver()
      .help(Text::tr("At which the plastic was melted."));
  fields.number("volume_mm3", volume, Text::tr("Volume"), "mm3")
      .bounds(1, 1e6)
      .carriesOver()
      .help(Text::tr("Commanded in each step that has no volume of its own."));
  fields.number("density_g_cm3", density, Text::tr("Density"), "g/cm3")
      .bounds(0.1, 20)
      .carriesOver()
      .help(Text::tr("Of the solid filament, from its data sheet."));
  fields.table("steps", steps, Text::tr("Steps"))
      .help(Text::tr("Eight flows or more, two of each, well below to well above the fall."));
  const std::string piece = Text::tr("Graded piece");
  fields.table("graded", graded, piece)
      .inGroup(piece, true)
      .carriesOver()
      .help(Text::tr("Instead of steps: a printed piece whose flow grows with height."));
  fields.table("bad_heights", badHeights, Text::tr("Bad heights"))
      .inGroup(piece, true)
      .help(Text::tr("Where the graded piece turns bad; one row per repeat."));
  fields.oneOf({"steps", "graded"});
  fields.number("margin", margin, Text::tr("Margin, share of the limit"), "1")
      .bounds(0, 0.9)
      .carriesOver()
      .help(Text::tr("Part taken off the lower limit for the safe flow."));
  fields.table("line_sizes", lineSizes, Text::tr("Line sizes"))
      .carriesOver()
      .help(Text::tr("Lines to know the speeds of; the first one gives the upper axis of the chart."));
  const std::string heat = Text::tr("Heat");
  fields.number("specific_heat_J_gK", specificHeat, Text::tr("Specific heat"), "J/(g K)")
      .bounds(0.1, 10)
      .inGroup(heat, true)
      .carriesOver()
      .help(Text::tr("Of the plastic, between room and nozzle; most lie between 1.2 and 2.3."));
  fields.number("room_C", room, Text::tr("Room"), "C").bounds(-20, 80).inGroup(heat, true);
  fields.number("hold_duty", holdDuty, Text::tr("Hold duty"), "1")
      .bounds(0, 1)
      .inGroup(heat, true)
      .help(Text::tr("Duty that holds the temperature without flow, 0 to 1; blank: from heater control."));
}

}  // namespace fettle
