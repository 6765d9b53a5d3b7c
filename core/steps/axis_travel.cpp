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
#include "core/steps/axis_travel/plans.h"
#include "core/steps/axis_travel/results.h"
#include "core/steps/axis_travel/run_findings.h"
#include "core/steps/axis_travel/scale.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

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
  const auto& key = keysOf<AxisTravelResults>();
  std::map<std::string, Homings> byAxis;
  for (const auto& row : included(rows)) {
    byAxis[row.axis].positions.push_back(*row.position);
    byAxis[row.axis].rows.push_back(row.number);
  }
  for (const auto& [axis, homings] : byAxis) {
    if (homings.positions.size() < 2) {
      const std::string why = Text::tr("one homing alone shows no scatter");
      result.withhold(key.homingSpread(axis), why);
      result.withhold(key.homingRange(axis), why);
      continue;
    }
    const auto [low, high] = std::minmax_element(homings.positions.begin(), homings.positions.end());
    result.give(key.homingSpread(axis), spreadOf(homings.positions, instrument));
    // A difference of two readings: the limit of error cancels.
    Quantity range = plainQuantity(*high - *low, "mm");
    range.u = instrument.r / std::sqrt(6.0);
    result.give(key.homingRange(axis), range);
    noteOutliers(result, homings.positions, homings.rows, instrument.r,
                 say(Text::tr("the homed position of {0},"), axis), "mm");
  }
}

}  // namespace

StepResult evaluate(const AxisTravelInputs& inputs, const StepContext& context) {
  StepResult result;
  const Instrument& instrument = context.instrument("measured_mm");
  const auto& key = keysOf<AxisTravelResults>();
  const auto axesMoved = runsByAxis(result, inputs.moves);
  for (const auto& runs : axesMoved) {
    giveAccuracy(result, runs, instrument);
    noteRuns(result, runs, instrument);
    result.attempt({key.scaleError(runs.axis), key.travelRatio(runs.axis), key.stepsPerMm(runs.axis)},
                   [&] { giveScale(result, runs, instrument, context); });
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
  step.benchMinutes = 40;
  step.readsSheet = {"motion",           "*.drive",      "*.pitch_mm",   "*.teeth",      "*.lead_mm",
                     "*.step_angle_deg", "*.microsteps", "travel_min_x", "travel_max_x", "travel_min_y",
                     "travel_max_y",     "travel_min_z", "travel_max_z"};
  step.plans = travelPlans();
  step.emptyCharts = axisTravelCharts({}, {}, {});
  return describedStep<AxisTravelResults, AxisTravelInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
