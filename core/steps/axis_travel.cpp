#include "core/steps/axis_travel.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/axis_travel/accuracy.h"
#include "core/steps/axis_travel/charts.h"
#include "core/steps/axis_travel/scale.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

std::vector<Choice> axes() {
  return {{"x", Text::tr("x")}, {"y", Text::tr("y")}, {"z", Text::tr("z")}};
}

struct Homings {
  std::vector<double> positions;
  std::vector<std::size_t> rows;
};

/// Standard deviation with its uncertainty; the limit of error cancels.
Quantity spreadOf(const std::vector<double>& positions, const Instrument& instrument) {
  const double s = maths::sampleStandardDeviation(positions);
  const Contribution parts[] = {
      {spreadUncertainty(s, positions.size(), instrument), static_cast<double>(positions.size() - 1)}};
  return combinedQuantity(s, "mm", parts);
}

void giveHomings(StepResult& result, const std::vector<AxisHoming>& rows, const Instrument& instrument) {
  std::map<std::string, Homings> byAxis;
  for (const auto& row : included(rows)) {
    byAxis[row.axis].positions.push_back(*row.position);
    byAxis[row.axis].rows.push_back(row.number);
  }
  for (const auto& [axis, homings] : byAxis) {
    if (homings.positions.size() < 2) {
      const std::string why = Text::tr("one homing alone shows no scatter");
      result.withhold(axis + ".homing_s", "mm", why);
      result.withhold(axis + ".homing_range", "mm", why);
      continue;
    }
    const auto [low, high] = std::minmax_element(homings.positions.begin(), homings.positions.end());
    result.give(axis + ".homing_s", spreadOf(homings.positions, instrument));
    // A difference of two readings: the limit of error cancels.
    Quantity range = plainQuantity(*high - *low, "mm");
    range.u = instrument.r / std::sqrt(6.0);
    result.give(axis + ".homing_range", range);
    noteOutliers(result, homings.positions, homings.rows, instrument.r,
                 say(Text::tr("the homed position of {0},"), axis), "mm");
  }
}

std::vector<ResultDescription> results() {
  return {
      {"<axis>.reversal", "mm", Text::tr("Reversal B"), {}, true},
      {"<axis>.reversal_mean", "mm", Text::tr("Mean reversal")},
      {"<axis>.repeatability", "mm", Text::tr("Repeatability R"), {}, true},
      {"<axis>.systematic_deviation", "mm", Text::tr("Systematic deviation E"), {}, true},
      {"<axis>.mean_deviation", "mm", Text::tr("Mean deviation M"), {}, true},
      {"<axis>.accuracy", "mm", Text::tr("Accuracy A"), {}, true},
      {"<axis>.scale_error", "1", Text::tr("Scale error, measured / commanded − 1"), {}, true},
      {"<axis>.travel_ratio", "1", Text::tr("Measured / commanded")},
      {"<axis>.steps_per_mm", "1/mm", Text::tr("Steps per mm")},
      {"<axis>.homing_s", "mm", Text::tr("Homing, standard deviation"), {}, true},
      {"<axis>.homing_range", "mm", Text::tr("Homing, range"), {}, true},
      {"<axis>.pairs_left", "", Text::tr("Parts that would explain it")},
      {"<axis>.pairs_struck_out", "", Text::tr("Struck out")},
  };
}

}  // namespace

void AxisMove::describe(FieldList& columns) {
  columns.choice("axis", axis, Text::tr("Axis"), axes()).required();
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
  columns.choice("axis", axis, Text::tr("Axis"), axes()).required();
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

StepResult evaluate(const AxisTravelInputs& inputs, const StepContext& context) {
  StepResult result;
  const Instrument& instrument = context.instrument("measured_mm");
  const auto axesMoved = runsByAxis(inputs.moves);
  if (axesMoved.empty()) {
    result.missing.push_back("moves");
  }
  for (const auto& runs : axesMoved) {
    giveAccuracy(result, runs, instrument);
    giveScale(result, runs, instrument, context);
  }
  if (context.sheet.motion == "delta" && !axesMoved.empty()) {
    result.addFinding(
        "scale-does-not-apply", Severity::note,
        Text::tr("On a delta every motor moves every axis: scale and steps per mm of an axis do not "
                 "apply to this motion. The other figures do."));
  }
  giveHomings(result, inputs.homings, context.instrument("mm"));
  result.charts = axisTravelCharts(axesMoved, inputs.moves, instrument);
  return result;
}

Step axisTravelStep() {
  Step step;
  step.key = "axis-travel";
  step.name = Text::tr("Axis travel");
  step.purpose = Text::tr("How far, how repeatably and with how much play each axis moves.");
  step.stage = Stage::motion;
  step.moves = true;
  step.caution = Text::tr("The axis moves while you measure: keep fingers and instruments out of its way.");
  step.headline = {"<axis>.repeatability"};
  step.results = results();
  step.settings = {{"<axis>.steps_per_mm", Text::tr("Steps per mm"), "1/mm"}};
  step.emptyCharts = axisTravelCharts({}, {}, {});
  return withInputs<AxisTravelInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
