#include "core/steps/power_up.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/power_up/devices.h"
#include "core/steps/power_up/results.h"
#include "core/steps/power_up/rises.h"
#include "core/steps/power_up/sensors.h"

namespace fettle {
namespace {

/// One finding for all that was read once.
void noteSingles(StepResult& result, const PowerUpInputs& inputs) {
  const bool room = inputs.room && !included(inputs.sensors).empty();
  if (room && inputs.tripTime) {
    noteSingleReading(result, Text::tr("Each of two values, room temperature and time to the trip,"));
  } else if (room || inputs.tripTime) {
    noteSingleReading(result,
                      room ? Text::tr("The temperature of the room") : Text::tr("The time to the trip"));
  }
}

void noteGuardNotProved(StepResult& result) {
  result.addFinding(
      "guard-not-proved", Severity::fault,
      Text::tr("The runaway guard is not proved yet: heater lead unplugged cold with the mains off, "
               "then a target of 50 °C must trip."),
      {}, "tripped");
}

/// Throws Refusal where the time contradicts the answer.
void giveTrip(StepResult& result, const PowerUpInputs& inputs, const StepContext& context) {
  const ResultId id = keysOf<PowerUpResults>().trip;
  if (inputs.tripTime && inputs.tripped && !*inputs.tripped) {
    throw Refusal{say(Text::tr("Runaway guard: it did not trip but a time of {0} s was entered; leave the "
                               "time blank, or answer that it tripped."),
                      formatNumber(*inputs.tripTime)),
                  "trip_s"};
  }
  if (inputs.tripTime) {
    const double reading[] = {*inputs.tripTime};
    result.give(id, meanOfReadings(reading, context.instrument("trip_s"), "s"));
  } else if (inputs.tripped && *inputs.tripped) {
    result.wantFor(id, {"trip_s"});
  } else {
    result.withhold(id, Text::tr("the runaway guard has not tripped"));
  }
}

void judgeGuard(StepResult& result, const PowerUpInputs& inputs, const StepContext& context) {
  const ResultId trip = keysOf<PowerUpResults>().trip;
  if (!result.attempt({trip}, [&] { giveTrip(result, inputs, context); })) {
    noteGuardNotProved(result);
  } else if (inputs.tripped && !*inputs.tripped) {
    result.addFinding(
        "guard-no-trip", Severity::fault,
        Text::tr("The runaway guard did not trip with the heater lead unplugged. Do not heat: a "
                 "sensor that falls out would heat without end."),
        "config-review", "tripped");
  } else if (!inputs.tripped && !inputs.tripTime) {
    noteGuardNotProved(result);
  }
}

void judgeFirstHeat(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
  std::string open;
  for (const auto& item : firstHeatItems()) {
    const auto is = [&](bool ok) {
      return std::any_of(answers.begin(), answers.end(), [&](const ChecklistAnswer& answer) {
        return answer.item == item.key && answer.ok && *answer.ok == ok;
      });
    };
    if (item.key == "no_smoke" && is(false)) {
      result.addFinding(
          "smoke", Severity::fault,
          Text::tr("Smoke or discolouring was seen at the first heat. Off, unplugged, and find the "
                   "place before anything heats again."),
          "safety", "first_heat");
    } else if (is(false) || !is(true)) {
      open += (open.empty() ? "" : "; ") + item.label;
    }
  }
  if (!open.empty()) {
    result.addFinding("first-heat-open", Severity::caution, say(Text::tr("First heat, open: {0}."), open),
                      {}, "first_heat");
  }
}

/// What the machine did wrong; what was entered wrong is refused and no fault of the machine.
double countFaults(const StepResult& result) {
  return static_cast<double>(
      std::count_if(result.findings.begin(), result.findings.end(), [](const Finding& finding) {
        return finding.severity == Severity::fault && finding.code != "refused";
      }));
}

}  // namespace

StepResult evaluate(const PowerUpInputs& inputs, const StepContext& context) {
  StepResult result;
  const bool begun = !inputs.devices.empty() || !inputs.sensors.empty() || inputs.room || inputs.tripped ||
                     inputs.tripTime || !inputs.rises.empty() || !inputs.firstHeat.empty();
  if (!begun) {
    result.want({"devices"});
  } else {
    judgeDevices(result, included(inputs.devices));
    judgeSensors(result, inputs, context);
    judgeGuard(result, inputs, context);
    judgeRises(result, included(inputs.rises));
    judgeFirstHeat(result, inputs.firstHeat);
    noteSingles(result, inputs);
    result.give(keysOf<PowerUpResults>().faults, countFaults(result));
  }
  result.charts = {restChart(inputs, context), risesChart(included(inputs.rises))};
  return result;
}

Step powerUpStep() {
  Step step;
  step.key = "power-up";
  step.name = Text::tr("Power-up check");
  step.purpose = Text::tr("Whether the machine does what it is told, cold and at its first heat.");
  step.stage = Stage::makeSafe;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr(
      "First motion and first heat: a hand on the stop, nobody else near, stay until it is cold again. "
      "Plug and unplug leads only with the mains off.");
  step.entryWidth = EntryWidth::wide;
  step.benchMinutes = 45;  // common practice, no source
  step.waitMinutes = 30;   // of heating and cooling; common practice, no source
  step.readsSheet = {"bed_power_W", "bed_max_C"};
  step.plans = {{"devices", Text::tr("Devices of this machine"), "devices",
                 [](const Json&, const StepContext& context) { return devicesOf(context.sheet); }}};
  step.emptyCharts = {restChart({}, {}), risesChart({})};
  return describedStep<PowerUpResults, PowerUpInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
