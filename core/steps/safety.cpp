#include "core/steps/safety.h"

#include "core/measure/text.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/safety/checks.h"
#include "core/steps/safety/circuits.h"
#include "core/steps/safety/earth.h"
#include "core/steps/safety/heaters.h"
#include "core/steps/safety/results.h"

namespace fettle {
namespace {

Tolerance earthTolerance(const StepContext& context, const std::string& id) {
  static const Step step = safetyStep();
  return toleranceOf(step, context, id);
}

void closeGate(StepResult& result, const std::vector<std::string>& critical) {
  if (critical.empty()) {
    return;
  }
  std::string list;
  for (const auto& words : critical) {
    list += (list.empty() ? "" : "; ") + words;
  }
  result.addFinding("critical-open", Severity::fault, say(Text::tr("Do not power up: {0}."), list));
}

}  // namespace

StepResult evaluate(const SafetyInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<SafetyResults>();
  StepResult result;
  const bool begun = !inputs.checks.empty() || !inputs.earth.empty() || !inputs.heaters.empty() ||
                     !inputs.circuits.empty();
  if (!begun) {
    result.want({"checks"});
  } else {
    auto critical = judgeChecks(result, inputs.checks);
    const auto append = [&](std::vector<std::string> more) {
      critical.insert(critical.end(), more.begin(), more.end());
    };
    append(judgeEarth(result, inputs.earth, context,
                      [&](const ResultId& part) { return earthTolerance(context, part.id); }));
    judgeHeaters(result, inputs, context);
    if (!included(inputs.earth).empty() || !included(inputs.heaters).empty()) {
      noteSingleReading(result, Text::tr("Each resistance"));
    }
    append(judgeCircuits(result, included(inputs.circuits)));
    result.give(key.criticalOpen, static_cast<double>(critical.size()));
    closeGate(result, critical);
    result.addFinding(
        "mains-work", Severity::note,
        Text::tr("Work on mains wiring is for a qualified person; local codes come before anything "
                 "said here."));
  }
  result.charts = {earthChart(inputs.earth, earthTolerance(context, "<part>.earth_ohm"), context),
                   circuitsChart(included(inputs.circuits))};
  return result;
}

Step safetyStep() {
  Step step;
  step.key = "safety";
  step.name = Text::tr("Safety and wiring");
  step.purpose = Text::tr("Whether the machine may be switched on.");
  step.stage = Stage::makeSafe;
  step.caution = Text::tr(
      "Unplug the machine and wait a minute before you open it. Work on mains wiring is for a qualified "
      "person under local codes.");
  step.entryWidth = EntryWidth::wide;
  step.benchMinutes = 40;  // common practice, no source
  step.readsSheet = {"supply_V", "supply_W", "hot_end_power_W", "bed_power_W"};
  step.emptyCharts = {earthChart({}, {}, {}), circuitsChart({})};
  return describedStep<SafetyResults, SafetyInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
