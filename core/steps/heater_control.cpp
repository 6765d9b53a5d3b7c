#include "core/steps/heater_control.h"

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/charts.h"
#include "core/steps/heater_control/guard.h"

namespace fettle {
namespace {

void describeTyped(HeaterControlInputs& in, FieldList& fields) {
  fields.number("gain_C", in.gain, Text::tr("Gain, known before"), "C")
      .bounds(1, 1e5)
      .onlyWhen("mode", {"step"})
      .help(Text::tr("Without a log: °C at full duty above the room."));
  fields.number("tau_s", in.timeConstant, Text::tr("Time constant, known before"), "s")
      .bounds(0.1, 1e5)
      .onlyWhen("mode", {"step"});
  fields.number("theta_s", in.deadTime, Text::tr("Dead time, known before"), "s")
      .bounds(0, 1e4)
      .onlyWhen("mode", {"step"});
  fields.number("Ku", in.ultimateGain, Text::tr("Ultimate gain, known before"), "1")
      .bounds(1e-6, 1e4)
      .onlyWhen("mode", {"relay"})
      .help(Text::tr("Without a log: duty, 0 to 1, per °C."));
  fields.number("Pu", in.ultimatePeriod, Text::tr("Ultimate period, known before"), "s")
      .bounds(0.01, 1e5)
      .onlyWhen("mode", {"relay"});
}

void describeTests(HeaterControlInputs& in, FieldList& fields) {
  fields.number("max_C", in.maximum, Text::tr("Highest temperature allowed"), "C")
      .bounds(30, 700)
      .help(Text::tr("Blank: the machine sheet's for hot end and bed."));
  fields.number("step_at_s", in.stepAt, Text::tr("Duty changes at"), "s")
      .bounds(0, 1e6)
      .onlyWhen("mode", {"step"})
      .help(Text::tr("Counted from the first row; needed when the log has no duty, like the next two."));
  fields.number("duty_before", in.dutyBefore, Text::tr("Duty before the step"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step"});
  fields.number("duty_after", in.dutyAfter, Text::tr("Duty after the step"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step"});
  fields.number("hysteresis_C", in.hysteresis, Text::tr("Half hysteresis"), "C")
      .bounds(0, 50)
      .onlyWhen("mode", {"relay"})
      .help(Text::tr("The relay switches at target plus and minus this."));
  fields.number("duty_low", in.dutyLow, Text::tr("Low duty of the relay"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"relay"})
      .help(Text::tr("Needed when the log has no duty, like the high one."));
  fields.number("duty_high", in.dutyHigh, Text::tr("High duty of the relay"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"relay"});
}

void describeControl(HeaterControlInputs& in, FieldList& fields) {
  fields.number("target_C", in.target, Text::tr("Target"), "C")
      .bounds(20, 700)
      .help(Text::tr("To heat up to in the simulation, and of the log when it has no target itself."));
  fields.number("room_C", in.room, Text::tr("Room"), "C").bounds(-20, 80);
  fields.number("tau_c_s", in.closedLoopTime, Text::tr("Time constant wanted of the closed loop"), "s")
      .bounds(0.01, 1e5)
      .onlyWhen("mode", {"step"})
      .help(Text::tr("For SIMC; blank: the dead time. Longer is calmer."));
  fields.number("output_full_scale", in.outputFullScale, Text::tr("Controller output at full duty"), "1")
      .bounds(1e-3, 1e6)
      .onlyWhen("mode", {"step", "relay"})
      .help(Text::tr("255 or 100, say, when the controller's gains count in such steps."));
  fields.number("period_s", in.period, Text::tr("Control period"), "s")
      .bounds(0.001, 60)
      .onlyWhen("mode", {"step", "relay"})
      .help(Text::tr("Time between two samples of the controller, when its gains count per sample."));
  fields.number("fan_duty", in.fanDuty, Text::tr("Duty the fan takes"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step", "relay"});
  fields.number("rise_window_s", in.riseWindow, Text::tr("Window of the runaway guard"), "s")
      .bounds(1, 3600)
      .help(Text::tr("Blank: 15 s for the hot end, 90 s for bed and chamber."));
}

/// What the log shows, by the mode of the run; a model when rules follow from it.
std::optional<HeaterModel> readLog(StepResult& result, const HeaterControlInputs& inputs,
                                   const StepContext& context, HeaterPicture& picture) {
  const std::string heater = inputs.heaterOf(context);
  const HeaterLog& log = *picture.log;
  noteOverLimit(result, log, picture.maximum);
  if (inputs.mode == "hold") {
    picture.hold = giveHoldTest(result, inputs, context, log);
    result.addFinding(
        "hold-proposes-nothing", Severity::note,
        Text::tr("This test shows how the control holds its target; a step or a relay test gives "
                 "settings for it."));
    return std::nullopt;
  }
  if (inputs.mode == "relay") {
    picture.relay = giveRelayTest(result, inputs, heater, log);
    return picture.relay ? std::optional(picture.relay->model) : std::nullopt;
  }
  picture.step = giveStepTest(result, inputs, context, log);
  return picture.step ? std::optional(modelOf(*picture.step)) : std::nullopt;
}

std::optional<HeaterModel> readModel(StepResult& result, const HeaterControlInputs& inputs,
                                     const StepContext& context, HeaterPicture& picture) {
  const std::string heater = inputs.heaterOf(context);
  const bool typedModel = inputs.mode == "step" && (inputs.gain || inputs.timeConstant || inputs.deadTime);
  const bool typedPoint = inputs.mode == "relay" && (inputs.ultimateGain || inputs.ultimatePeriod);
  if (picture.log) {
    if (typedModel || typedPoint) {
      result.addFinding(
          "typed-not-used", Severity::note,
          Text::tr("A log and the numbers of an earlier test were both entered; the log counts."));
    }
    return readLog(result, inputs, context, picture);
  }
  if (typedModel) {
    return giveTypedModel(result, inputs, heater);
  }
  if (typedPoint) {
    return giveTypedPoint(result, inputs, heater);
  }
  result.missing.emplace_back("log");
  return std::nullopt;
}

std::optional<double> targetOf(const HeaterControlInputs& inputs, const HeaterPicture& picture) {
  const bool inLog =
      picture.log && !picture.log->target.empty() && picture.log->target.back() > inputs.room;
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

void giveControl(StepResult& result, const HeaterControlInputs& inputs, const StepContext& context,
                 const HeaterModel& model, HeaterPicture& picture) {
  const auto settings = giveRules(result, inputs, inputs.heaterOf(context), model);
  HeaterModel simulated = model;
  if (!model.plant && picture.relay && picture.relay->plant) {
    simulated = HeaterModel{picture.relay->plant, {}, {}, infiniteDegreesOfFreedom};
    noteRelayModel(result, *simulated.plant);
  }
  if (simulated.plant) {
    picture.simulation =
        giveSimulation(result, inputs, context, simulated, targetOf(inputs, picture), settings);
  } else {
    result.addFinding(
        "rules-not-simulated", Severity::note,
        Text::tr("Ku and Pu alone do not give the heater's gain, so the rules are not simulated and "
                 "none is recommended. A step test, or a relay's log with its duty, does both."));
  }
}

std::vector<ResultDescription> ruleDescriptions() {
  std::vector<ResultDescription> all{
      {"<heater>.<rule>.Kc", "1", Text::tr("Gain, duty per °C")},
      {"<heater>.<rule>.Ti_s", "s", Text::tr("Integral time")},
      {"<heater>.<rule>.Td_s", "s", Text::tr("Derivative time")},
      {"<heater>.<rule>.Kp", "1", Text::tr("Kp, duty 0 to 1")},
      {"<heater>.<rule>.Ki", "1", Text::tr("Ki, duty 0 to 1")},
      {"<heater>.<rule>.Kd", "1", Text::tr("Kd, duty 0 to 1")},
      {"<heater>.<rule>.Kp_at_full_scale", "1", Text::tr("Kp at full scale")},
      {"<heater>.<rule>.Ki_at_full_scale", "1", Text::tr("Ki at full scale")},
      {"<heater>.<rule>.Kd_at_full_scale", "1", Text::tr("Kd at full scale")},
      {"<heater>.<rule>.Kp_per_sample", "1", Text::tr("Kp per sample")},
      {"<heater>.<rule>.Ki_per_sample", "1", Text::tr("Ki per sample")},
      {"<heater>.<rule>.Kd_per_sample", "1", Text::tr("Kd per sample")},
      {"<heater>.<rule>.overshoot_C", "C", Text::tr("Simulated overshoot")},
      {"<heater>.<rule>.settling_s", "s", Text::tr("Simulated settling time")},
      {"<heater>.<rule>.dip_C", "C", Text::tr("Simulated dip under the fan")}};
  return all;
}

std::vector<ResultDescription> resultDescriptions() {
  std::vector<ResultDescription> all{
      {"<heater>.gain_C", "C", Text::tr("Gain, °C at full duty")},
      {"<heater>.tau_s", "s", Text::tr("Time constant")},
      {"<heater>.theta_s", "s", Text::tr("Dead time")},
      {"<heater>.Ku", "1", Text::tr("Ultimate gain, duty per °C")},
      {"<heater>.Pu", "s", Text::tr("Ultimate period")},
      {"<heater>.recommended", "", Text::tr("Recommended rule")},
      {"<heater>.reason", "", Text::tr("Because")},
      {"<heater>.overshoot_C", "C", Text::tr("Overshoot")},
      {"<heater>.settling_s", "s", Text::tr("Settling time")},
      {"<heater>.mean_error_C", "C", Text::tr("Mean error")},
      {"<heater>.s_C", "C", Text::tr("Standard deviation")},
      {"<heater>.peak_to_peak_C", "C", Text::tr("Peak to peak")},
      {"<heater>.slope_C_per_min", "C/min", Text::tr("Drift")},
      {"<heater>.greatest_fall_C", "C", Text::tr("Greatest fall below target")},
      {"<heater>.held_s", "s", Text::tr("Held within ±1 °C"), {holdEnough, std::nullopt}, true},
      {"<heater>.slowest_rise_C", "C", Text::tr("Slowest rise at full duty")},
      {"<heater>.guard_rise_C", "C", Text::tr("Rise a runaway guard may ask for")}};
  for (auto& description : ruleDescriptions()) {
    all.push_back(std::move(description));
  }
  return all;
}

}  // namespace

void HeaterControlInputs::describe(FieldList& fields) {
  describeHeater(fields);
  fields
      .choice("mode", mode, Text::tr("Test"),
              {{"step", Text::tr("Step of duty")},
               {"relay", Text::tr("Relay")},
               {"hold", Text::tr("Approach and hold")}})
      .required();
  fields
      .capture("log", log, Text::tr("Log"),
               [](FieldList& columns) {
                 columns.column("time_s", Text::tr("Time"), "s").required();
                 columns.column("temp_C", Text::tr("Temperature"), "C").required();
                 columns.column("duty", Text::tr("Duty"), "1");
                 columns.column("target_C", Text::tr("Target"), "C");
               })
      .help(Text::tr("Of the machine: time and temperature, with duty and target where it gives them."));
  describeTests(*this, fields);
  describeControl(*this, fields);
  describeTyped(*this, fields);
}

StepResult evaluate(const HeaterControlInputs& inputs, const StepContext& context) {
  StepResult result;
  HeaterPicture picture;
  picture.maximum = allowedMaximum(inputs, context);
  if (inputs.log) {
    picture.log = heaterLogOf(*inputs.log);
  }
  const std::string heater = inputs.heaterOf(context);
  if (heater.empty()) {
    result.missing.emplace_back("heater");
    result.charts = heaterCharts(picture);
    return result;
  }
  const auto model = readModel(result, inputs, context, picture);
  if (result.missing.empty()) {
    if (model) {
      giveControl(result, inputs, context, *model, picture);
    }
    giveGuard(result, heater, picture.log, inputs.riseWindow.value_or(riseWindowOf(heater)));
    inputs.noteOtherHeater(result, context);
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
      "highest "
      "temperature allowed. Hot metal burns at a touch.");
  step.headline = {"<heater>.gain_C", "<heater>.held_s", "<heater>.Pu"};
  step.results = resultDescriptions();
  step.settings = {{"<heater>.Kp", Text::tr("Proportional gain"), "1"},
                   {"<heater>.Ki", Text::tr("Integral gain"), "1"},
                   {"<heater>.Kd", Text::tr("Derivative gain"), "1"}};
  step.names = ruleNames();
  step.emptyCharts = heaterCharts({});
  return withInputs<HeaterControlInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
