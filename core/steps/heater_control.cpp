#include "core/steps/heater_control.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/charts.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/guard.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

/// What the chosen test gives before the rules; nothing while none is chosen.
std::vector<ResultId> testResults(const std::string& mode, const std::string& heater) {
  return mode == "step"    ? stepTestResults(heater)
         : mode == "relay" ? relayTestResults(heater)
         : mode == "hold"  ? holdTestResults(heater)
                           : std::vector<ResultId>{};
}

/// How the chosen test is done once.
std::string howToTest(const std::string& mode) {
  return mode == "step" ? Text::tr(
                              "Log one step test: one change of duty from a steady temperature, until "
                              "the temperature hardly moves.")
         : mode == "relay"
             ? Text::tr(
                   "Log one relay test: two duties that switch about the target, until four cycles "
                   "look alike.")
             : Text::tr("Log one hold: from cold to the target, and ten minutes there.");
}

bool isTyped(const HeaterControlInputs& inputs) {
  return (inputs.mode == "step" && (inputs.gain || inputs.timeConstant || inputs.deadTime)) ||
         (inputs.mode == "relay" && (inputs.ultimateGain || inputs.ultimatePeriod));
}

/// What the log shows, by the mode of the run; a model when rules follow from it.
std::optional<HeaterModel> readTest(StepResult& result, const HeaterControlInputs& inputs,
                                    const std::string& heater, const StepContext& context,
                                    HeaterPicture& picture) {
  const HeaterLog& log = *picture.log;
  if (inputs.mode == "hold") {
    picture.hold = giveHoldTest(result, inputs, heater, log, context);
    return std::nullopt;
  }
  if (inputs.mode == "relay") {
    picture.relay = giveRelayTest(result, inputs, heater, log);
    return picture.relay ? std::optional(picture.relay->model) : std::nullopt;
  }
  picture.step = giveStepTest(result, inputs, heater, log, picture.maximum);
  return picture.step ? std::optional(modelOf(*picture.step)) : std::nullopt;
}

/// The log as it is, before any test is read from it. Where it is refused, all waits that needs it.
void readLog(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
             HeaterPicture& picture) {
  std::vector<ResultId> needing = testResults(inputs.mode, heater);
  for (const ResultId& id : guardResults(heater)) {
    needing.push_back(id);
  }
  if (result.attempt(needing, [&] { picture.log = heaterLogOf(*inputs.log); })) {
    noteLog(result, *picture.log, picture.maximum);
  }
}

std::optional<HeaterModel> modelFromLog(StepResult& result, const HeaterControlInputs& inputs,
                                        const std::string& heater, const StepContext& context,
                                        HeaterPicture& picture) {
  if (isTyped(inputs)) {
    result.addFinding(
        "typed-not-used", Severity::note,
        Text::tr("A log and the numbers of an earlier test were both entered; the log counts."), {}, "log");
  }
  if (inputs.mode == "hold") {
    result.addFinding(
        "hold-proposes-nothing", Severity::note,
        Text::tr("This test shows how the control holds its target; a step or a relay test gives "
                 "settings for it."));
  }
  std::optional<HeaterModel> model;
  const bool read = picture.log && result.attempt(testResults(inputs.mode, heater), [&] {
    model = readTest(result, inputs, heater, context, picture);
  });
  if (!read) {
    result.next.push_back({"log", 1, howToTest(inputs.mode)});
  }
  return model;
}

/// What is known of the heater, from the log or from typed numbers; what is not waits for them.
std::optional<HeaterModel> giveModel(StepResult& result, const HeaterControlInputs& inputs,
                                     const std::string& heater, const StepContext& context,
                                     HeaterPicture& picture) {
  if (inputs.mode.empty()) {
    result.want({"mode"});
    return std::nullopt;
  }
  if (inputs.log) {
    return modelFromLog(result, inputs, heater, context, picture);
  }
  if (isTyped(inputs)) {
    return inputs.mode == "step" ? giveTypedModel(result, inputs, heater)
                                 : giveTypedPoint(result, inputs, heater);
  }
  for (const ResultId& id : testResults(inputs.mode, heater)) {
    result.wantFor(id, {"log"});
  }
  result.next.push_back({"log", 1, howToTest(inputs.mode)});
  return std::nullopt;
}

/// As typed, NaN when that was refused; else the last target of the log that heats.
std::optional<double> targetOf(const HeaterControlInputs& inputs, const HeaterPicture& picture) {
  const bool inLog =
      picture.log && !picture.log->target.empty() && !(picture.log->target.back() <= inputs.room);
  return !inputs.target && inLog ? std::optional(picture.log->target.back()) : inputs.target;
}

void noteRelayModel(StepResult& result, const maths::DeadTimeModel& plant) {
  result.addFinding(
      "simulated-from-relay", Severity::note,
      say(Text::tr("The rules are simulated on a gain of {0} °C, the mean temperature above the room "
                   "over the mean duty, with a time constant of {1} s and a dead time of {2} s, which "
                   "swing as the relay found. A step test shows these surer."),
          formatFixed(plant.gain, 0), formatPlain(plant.timeConstant), formatPlain(plant.deadTime)));
}

void noteNotSimulated(StepResult& result, const std::string& heater,
                      const std::vector<RuleSetting>& settings) {
  withholdSimulation(result, heater, settings, Text::tr("the gain of the heater is not known"));
  result.addFinding(
      "rules-not-simulated", Severity::note,
      Text::tr("Ku and Pu alone do not give the heater's gain, so the rules are not simulated and "
               "none is proposed. A step test, or a relay's log with its duty, does both."));
  result.next.push_back({"log", 1, howToTest("step")});
}

void giveControl(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
                 const StepContext& context, const HeaterModel& model, HeaterPicture& picture) {
  const auto settings = giveRules(result, inputs, heater, model);
  HeaterModel simulated = model;
  if (!model.plant && picture.relay && picture.relay->plant) {
    simulated = HeaterModel{picture.relay->plant, {}, {}, infiniteDegreesOfFreedom};
    noteRelayModel(result, *simulated.plant);
  }
  if (simulated.plant) {
    picture.simulation =
        giveSimulation(result, inputs, heater, simulated, targetOf(inputs, picture), settings, context);
  } else if (areEntered(result, simulationResults(heater, settings), {{"room_C", inputs.room}})) {
    noteNotSimulated(result, heater, settings);
  }
  if (result.next.empty() && !result.settings.empty()) {
    result.next.push_back(
        {"log", 1, Text::tr("Adopt the gains and set them, then log one hold with them in a new run.")});
  }
}

/// The guard, from a log that was not refused.
void giveGuardOf(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
                 const HeaterPicture& picture) {
  if (picture.log || (!inputs.log && isTyped(inputs))) {
    giveGuard(result, inputs, heater, picture.log);
  } else if (!inputs.log) {
    for (const ResultId& id : guardResults(heater)) {
      result.wantFor(id, {"log"});
    }
  }
}

void askForHeater(StepResult& result, const HeaterControlInputs& inputs, HeaterPicture& picture) {
  result.want({"heater"});
  result.next.push_back({"heater", std::nullopt, Text::tr("Say which heater the run is about.")});
  if (inputs.log) {
    result.attempt({}, [&] { picture.log = heaterLogOf(*inputs.log); });
  }
}

}  // namespace

StepResult evaluate(const HeaterControlInputs& inputs, const StepContext& context) {
  StepResult result;
  HeaterPicture picture;
  picture.maximum = allowedMaximum(inputs, context);
  const std::string heater = inputs.heaterOf(context);
  if (heater.empty()) {
    askForHeater(result, inputs, picture);
    result.charts = heaterCharts(picture);
    return result;
  }
  picture.about = heaterName(heater);
  inputs.noteOtherHeater(result, context);
  if (inputs.log) {
    readLog(result, inputs, heater, picture);
  }
  const auto model = giveModel(result, inputs, heater, context, picture);
  if (model) {
    giveControl(result, inputs, heater, context, *model, picture);
  }
  giveGuardOf(result, inputs, heater, picture);
  if (picture.log || model) {
    result.addFinding(
        "runaway-guard", Severity::note,
        Text::tr("A runaway guard must be on before any unattended run: the machine has to switch "
                 "off by itself when the temperature does not follow the heater."),
        "power-up");
  }
  result.charts = heaterCharts(picture);
  return result;
}

Step heaterControlStep() {
  Step step;
  step.key = "heater-control";
  step.name = Text::tr("Heater control");
  step.purpose =
      Text::tr("How a heater answers, and the control that brings it to its target and keeps it.");
  step.stage = Stage::heat;
  step.subjectField = "heater";
  step.heats = true;
  step.caution = Text::tr(
      "Stay by the machine through the whole test, one hand at the switch. Break off at 0.95 of the "
      "highest temperature allowed. Hot metal burns at a touch.");
  step.benchMinutes = 10;  // common practice, no source
  step.waitMinutes = 30;   // of heating and standing beside it; common practice, no source
  step.readsSheet = {"hot_end_max_C", "bed_max_C"};
  step.emptyCharts = heaterCharts({});
  return describedStep<HeaterControlResults, HeaterControlInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
