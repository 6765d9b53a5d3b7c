#include "core/steps/melt_rate.h"

#include <numbers>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/melt_rate/charts.h"
#include "core/steps/melt_rate/graded.h"
#include "core/steps/melt_rate/steps.h"
#include "core/steps/melt_rate/use.h"

namespace fettle {
namespace {

/// Gives `flow_safe` = (1 − margin)·lower limit and proposes it and the flow limit.
std::optional<double> giveSafeFlow(StepResult& result, const StepContext& context, const FlowLimit& flow,
                                   double margin) {
  if (flow.limit) {
    result.propose("flow_limit", context.asFoundValue("flow_limit"), *flow.limit);
  }
  if (!flow.lower) {
    result.withhold("flow_safe", "mm3/s", flow.whyNoLower);
    return std::nullopt;
  }
  const Quantity safe = plainQuantity((1 - margin) * *flow.lower, "mm3/s");
  result.give("flow_safe", safe);
  result.propose("flow_safe", context.asFoundValue("flow_safe"), safe);
  return safe.value;
}

FlowLimit flowLimitOf(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
                      MeltPicture& picture) {
  picture.steps = deliveredSteps(inputs, context, result.missing);
  FlowLimit flow;
  if (!included(inputs.steps).empty()) {
    if (!included(inputs.graded).empty()) {
      result.addFinding("graded-not-used", Severity::note,
                        Text::tr("Flow steps and a graded piece were both entered; the steps count."));
    }
    if (result.missing.empty()) {
      flow = giveHinge(result, picture.steps);
      picture.hinge = flow.hinge;
    }
  } else if (included(inputs.graded).empty() && included(inputs.badHeights).empty()) {
    result.missing.push_back("steps");
  } else if (auto graded = giveGraded(result, inputs)) {
    flow.limit = graded->limit;
    flow.lower = graded->limit.value - *expandedUncertainty(graded->limit);
    picture.graded = std::move(graded);
  }
  return flow;
}

void noteCommonPractice(StepResult& result) {
  result.addFinding(
      "free-air", Severity::note,
      Text::tr("Free air reads high: a print adds back pressure. Confirm the flow with an acceptance "
               "print."),
      "acceptance-prints");
  result.addFinding(
      "melt-zones", Severity::note,
      Text::tr("For comparison: short melt zones give 8–12, long ones about 15, extra long ones "
               "25–30 mm³/s (common practice, no source)."));
}

}  // namespace

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
      .help(Text::tr("Commanded in this step; blank: the one volume for all."))
      .alsoNamed({"volume", "commanded volume"});
  columns.number("density_g_cm3", density, Text::tr("Density"), "g/cm3")
      .bounds(0.1, 20)
      .help(Text::tr("Of this step's filament; blank: the one density for all."))
      .alsoNamed({"density"});
}

void GradedPiece::describe(FieldList& columns) {
  columns.number("bottom_value", bottomValue, Text::tr("Flow at the bottom"), "mm3/s")
      .bounds(0, 1000)
      .required();
  columns.number("value_per_mm", valuePerMm, Text::tr("Flow per mm of height"), "1")
      .bounds(1e-6, 1000)
      .required()
      .help(Text::tr("By how many mm³/s the flow grows with each mm of height."));
  columns.number("stair_mm", stair, Text::tr("Height of a stair"), "mm")
      .bounds(0.01, 100)
      .help(Text::tr("Needed when only the bad height was noted."));
}

void BadHeight::describe(FieldList& columns) {
  columns.number("last_good_mm", lastGood, Text::tr("Last good height"), "mm")
      .bounds(0, 1000)
      .help(Text::tr("Blank: one stair below the bad height."));
  columns.number("bad_height_mm", badHeight, Text::tr("Bad height"), "mm")
      .bounds(0, 1000)
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
      .help(Text::tr("At which the plastic was melted."));
  fields.number("volume_mm3", volume, Text::tr("Volume"), "mm3")
      .bounds(1, 1e6)
      .help(Text::tr("Commanded in each step that has no volume of its own."));
  fields.number("density_g_cm3", density, Text::tr("Density"), "g/cm3")
      .bounds(0.1, 20)
      .help(Text::tr("Of the solid filament, from its data sheet."));
  fields.table("steps", steps, Text::tr("Steps"))
      .help(Text::tr("Eight flows or more, two of each, well below to well above the fall."));
  fields.table("graded", graded, Text::tr("Graded piece"))
      .help(Text::tr("Instead of steps: a printed piece whose flow grows with height."));
  fields.table("bad_heights", badHeights, Text::tr("Bad heights"))
      .help(Text::tr("Where the graded piece turns bad; one row per repeat."));
  fields.number("margin", margin, Text::tr("Margin, share of the limit"), "1")
      .bounds(0, 0.9)
      .help(Text::tr("Part taken off the lower limit for the safe flow."));
  fields.table("line_sizes", lineSizes, Text::tr("Line sizes"))
      .help(Text::tr("Lines to know the speeds of; the first one gives the upper axis of the chart."));
  fields.number("specific_heat_J_gK", specificHeat, Text::tr("Specific heat"), "J/(g K)")
      .bounds(0.1, 10)
      .help(Text::tr("Of the plastic, between room and nozzle; most lie between 1.2 and 2.3."));
  fields.number("room_C", room, Text::tr("Room"), "C").bounds(-20, 80);
  fields.number("hold_duty", holdDuty, Text::tr("Hold duty"), "1")
      .bounds(0, 1)
      .help(Text::tr("Duty that holds the temperature without flow, 0 to 1; blank: from heater control."));
}

StepResult evaluate(const MeltRateInputs& inputs, const StepContext& context) {
  StepResult result;
  MeltPicture picture;
  picture.sizes = includedSizes(inputs.lineSizes);
  const FlowLimit flow = flowLimitOf(result, inputs, context, picture);
  if (result.missing.empty()) {
    if (flow.limit) {
      picture.limit = flow.limit->value;
    }
    picture.safe = giveSafeFlow(result, context, flow, inputs.margin);
    giveSpeeds(result, picture.sizes, flow.limit, picture.safe);
    giveHeat(result, inputs, context, flow.limit);
    noteCommonPractice(result);
  }
  result.charts = meltRateCharts(picture);
  return result;
}

Step meltRateStep() {
  Step step;
  step.key = "melt-rate";
  step.name = Text::tr("Melt rate");
  step.purpose = Text::tr("How much plastic this hot end melts before it falls behind.");
  step.stage = Stage::plastic;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr("Hot nozzle and hot strands burn at a touch. Keep hands clear.");
  step.headline = {"flow_limit"};
  step.reads = {"heater-control.hot_end.gain_C"};
  step.results = {
      {"flow_limit", "mm3/s", Text::tr("Flow limit")},
      {"flow_safe", "mm3/s", Text::tr("Safe flow")},
      {"hinge_flow", "mm3/s", Text::tr("Hinge")},
      {"plateau", "1", Text::tr("Delivered / commanded at low flow")},
      {"slope", "1", Text::tr("Fall per mm³/s beyond the hinge")},
      {"line_<k>.speed_limit", "mm/s", Text::tr("Speed at the flow limit")},
      {"line_<k>.speed_safe", "mm/s", Text::tr("Speed at the safe flow")},
      {"line_<k>.size", "", Text::tr("Line")},
      {"heat_needed_W", "W", Text::tr("Heat needed at the flow limit")},
      {"heat_available_W", "W", Text::tr("Heat the heater has left")},
  };
  step.settings = {
      {"flow_limit", Text::tr("Flow limit"), "mm3/s"},
      {"flow_safe", Text::tr("Safe flow"), "mm3/s"},
  };
  step.emptyCharts = meltRateCharts({});
  return withInputs<MeltRateInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
