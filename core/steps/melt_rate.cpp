#include "core/steps/melt_rate.h"

#include <array>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/melt_rate/charts.h"
#include "core/steps/melt_rate/graded.h"
#include "core/steps/melt_rate/results.h"
#include "core/steps/melt_rate/steps.h"
#include "core/steps/melt_rate/use.h"

namespace fettle {
namespace {

/// The flow limit waits for entries, or was refused.
FlowLimit withoutLimit(StepResult& result) {
  const auto& key = keysOf<MeltRateResults>();
  FlowLimit flow;
  if (const ResultValue* limit = result.find(ResultId(key.flowLimit).id)) {
    flow.noLimit = {limit->why, limit->lacks};
  }
  flow.noLower = flow.noLimit;
  return flow;
}

/// All that the lines through the steps give waits for these entries.
FlowLimit waitFor(StepResult& result, const std::vector<std::string>& lacks) {
  const auto& key = keysOf<MeltRateResults>();
  for (const ResultId& id :
       {ResultId(key.plateau), ResultId(key.slope), ResultId(key.hingeFlow), ResultId(key.flowLimit)}) {
    result.wantFor(id, lacks);
  }
  return withoutLimit(result);
}

FlowLimit limitOfSteps(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
                       MeltPicture& picture) {
  const auto& key = keysOf<MeltRateResults>();
  std::vector<std::string> lacks;
  picture.steps = deliveredSteps(result, inputs, context, lacks);
  if (!included(inputs.graded).empty()) {
    result.addFinding("graded-not-used", Severity::note,
                      Text::tr("Flow steps and a graded piece were both entered; the steps count."), {},
                      "graded");
  }
  if (!lacks.empty() && !areEnough(picture.steps)) {
    return waitFor(result, lacks);
  }
  result.want(lacks);
  FlowLimit flow;
  if (!result.attempt({key.plateau, key.slope, key.hingeFlow, key.flowLimit},
                      [&] { flow = giveHinge(result, picture.steps); })) {
    return withoutLimit(result);
  }
  picture.hinge = flow.hinge;
  return flow;
}

FlowLimit limitOfPiece(StepResult& result, const MeltRateInputs& inputs, MeltPicture& picture) {
  const auto& key = keysOf<MeltRateResults>();
  result.attempt({key.flowLimit}, [&] { picture.graded = giveGraded(result, inputs); });
  if (!picture.graded) {
    return withoutLimit(result);
  }
  FlowLimit flow;
  flow.limit = picture.graded->limit;
  flow.lower = flow.limit->value - *expandedUncertainty(*flow.limit);
  return flow;
}

FlowLimit flowLimitOf(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
                      MeltPicture& picture) {
  if (!included(inputs.steps).empty()) {
    return limitOfSteps(result, inputs, context, picture);
  }
  std::vector<std::string> ignored;
  picture.steps = deliveredSteps(result, inputs, context, ignored);  // those that are excluded
  if (!included(inputs.graded).empty() || !included(inputs.badHeights).empty()) {
    return limitOfPiece(result, inputs, picture);
  }
  return waitFor(result, {"steps"});
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

/// Eight flows about the limit in force, or that of a short melt zone, each twice; up and down in mixed
/// order, so that drift does not look like melting. Common practice, no source.
Json eightFlows(const Json& /*inputs*/, const StepContext& context) {
  constexpr double shortZone = 10;
  constexpr std::array shares{0.4, 0.6, 0.8, 1.0, 1.15, 1.3, 1.5, 1.7};
  constexpr std::array order{0, 4, 2, 6, 1, 5, 3, 7, 7, 3, 5, 1, 6, 2, 4, 0};
  const double limit =
      context.inForceNumber(keysOf<MeltRateResults>().flowLimitSetting).value_or(shortZone);
  Json rows = Json::array();
  for (const int index : order) {
    const double flow = std::round(2 * limit * shares[static_cast<std::size_t>(index)]) / 2;
    rows.push_back({{"flow_mm3_s", std::max(flow, 0.5)}});
  }
  return rows;
}

}  // namespace

StepResult evaluate(const MeltRateInputs& inputs, const StepContext& context) {
  StepResult result;
  MeltPicture picture;
  picture.sizes = usableSizes(result, inputs.lineSizes);
  const FlowLimit flow = flowLimitOf(result, inputs, context, picture);
  if (flow.limit) {
    picture.limit = flow.limit->value;
  }
  picture.safe = giveSafeFlow(result, flow, inputs.margin);
  giveSpeeds(result, picture.sizes, flow, picture.safe);
  giveHeat(result, inputs, context, flow);
  if (flow.limit || !picture.steps.flow.empty()) {
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
  step.benchMinutes = 40;
  step.waitMinutes = 5;
  step.reads = {"heater-control.hot_end.gain_C"};
  step.readsSheet = {"hot_end_power_W"};
  step.plans = {{"eight-flows", Text::tr("Eight flows, two of each"), "steps", &eightFlows}};
  step.emptyCharts = meltRateCharts({});
  return describedStep<MeltRateResults, MeltRateInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
