#include "core/steps/heater_control/simulation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/hold_test.h"
#include "core/steps/heater_control/log.h"

namespace fettle {
namespace {

constexpr double earliestFan = 900;       // s
constexpr double fanAfterSettling = 300;  // s
constexpr double overshootAllowed = 2;    // °C
constexpr double mostSamples = 400'000;

double periodFor(const HeaterControlInputs& inputs, const maths::DeadTimeModel& plant, double duration) {
  const double fine = std::min(plant.deadTime > 0 ? plant.deadTime : plant.timeConstant, 100.0) / 500;
  return std::max(inputs.period.value_or(fine), duration / mostSamples);
}

SimulatedRule simulate(const RuleSetting& setting, const HeaterControlInputs& inputs,
                       const maths::DeadTimeModel& plant, double target) {
  // Long enough for the slowest of plant, integral and the closed loop that SIMC was asked for.
  const double pace = std::max(
      {plant.timeConstant + plant.deadTime, setting.pid.integralTime, inputs.closedLoopTime.value_or(0)});
  const double horizon = std::max(1800.0, 10 * pace);
  maths::ControlLoop loop;
  loop.plant = plant;
  loop.controller = setting.pid;
  loop.rest = inputs.room;
  loop.target = target;
  loop.period = periodFor(inputs, plant, horizon);
  loop.loadFrom = std::numeric_limits<double>::max();
  SimulatedRule rule;
  rule.key = setting.key;
  rule.name = setting.name;
  rule.response = maths::simulateLoop(loop, horizon);
  const auto& calm = rule.response.output;
  rule.overshoot = std::max(*std::max_element(calm.begin(), calm.end()) - target, 0.0);
  rule.settling = maths::settledFrom(rule.response, target, holdBand, horizon);
  if (!rule.settling) {
    return rule;
  }
  rule.fanFrom = std::max(earliestFan, *rule.settling + fanAfterSettling);
  loop.load = inputs.fanDuty;
  loop.loadFrom = rule.fanFrom;
  rule.response = maths::simulateLoop(loop, rule.fanFrom + std::max(600.0, 20 * plant.deadTime));
  const auto& output = rule.response.output;
  const auto from = std::lower_bound(rule.response.time.begin(), rule.response.time.end(), rule.fanFrom) -
                    rule.response.time.begin();
  rule.dip = std::max(target - *std::min_element(output.begin() + from, output.end()), 0.0);
  return rule;
}

void giveRule(StepResult& result, const std::string& heater, const SimulatedRule& rule) {
  const auto id = [&](const char* name) { return idOf(heater, rule.key + "." + name); };
  result.give(id("overshoot_C"), rule.overshoot, "C");
  if (rule.settling) {
    result.give(id("settling_s"), *rule.settling, "s");
    result.give(id("dip_C"), *rule.dip, "C");
  } else {
    const std::string why = Text::tr("the simulated loop does not come to stay within ±1 °C");
    result.withhold(id("settling_s"), "s", why);
    result.withhold(id("dip_C"), "C", why);
  }
}

void withholdTable(StepResult& result, const std::string& heater, const std::vector<RuleSetting>& settings,
                   const std::string& why) {
  for (const RuleSetting& setting : settings) {
    for (const auto& [name, unit] : {std::pair("overshoot_C", "C"), {"settling_s", "s"}, {"dip_C", "C"}}) {
      result.withhold(idOf(heater, setting.key + "." + name), unit, why);
    }
  }
}

std::optional<std::size_t> recommend(const std::vector<SimulatedRule>& rules) {
  std::optional<std::size_t> gentle;
  std::optional<std::size_t> least;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (!rules[i].settling) {
      continue;
    }
    if (rules[i].overshoot <= overshootAllowed && (!gentle || *rules[i].dip < *rules[*gentle].dip)) {
      gentle = i;
    }
    if (!least || rules[i].overshoot < rules[*least].overshoot) {
      least = i;
    }
  }
  return gentle ? gentle : least;
}

std::string reasonFor(const SimulatedRule& rule) {
  return rule.overshoot <= overshootAllowed
             ? say(Text::tr("{0}: the smallest dip, {1} °C, of the rules that overshoot by 2 °C or less"),
                   rule.name, formatFixed(*rule.dip, 1))
             : say(Text::tr("{0}: every rule overshoots by more than 2 °C, this one least, {1} °C"),
                   rule.name, formatFixed(rule.overshoot, 1));
}

void propose(StepResult& result, const StepContext& context, const std::string& heater,
             const RuleSetting& setting) {
  for (const char* gain : {"Kp", "Ki", "Kd"}) {
    const auto scaled = setting.quantities.find(std::string(gain) + "_at_full_scale");
    const Quantity& quantity =
        scaled != setting.quantities.end() ? scaled->second : setting.quantities.at(gain);
    result.propose(idOf(heater, gain), context.asFoundValue(idOf(heater, gain)), quantity);
  }
}

void giveRecommended(StepResult& result, const StepContext& context, const std::string& heater,
                     const Simulation& simulation, const std::vector<RuleSetting>& settings) {
  if (!simulation.recommended) {
    result.addFinding(
        "no-rule-settles", Severity::caution,
        Text::tr("No rule's simulated loop settles, so none is recommended. A longer time constant "
                 "wanted of the closed loop makes SIMC calmer."));
    return;
  }
  const SimulatedRule& best = simulation.rules[*simulation.recommended];
  result.say(idOf(heater, "recommended"), best.key);
  result.say(idOf(heater, "reason"), reasonFor(best));
  propose(result, context, heater, settings[*simulation.recommended]);
}

/// Typed numbers are known.
bool deadTimeIsKnown(const HeaterModel& model) {
  if (model.covariance.size() == 0) {
    return true;
  }
  Quantity deadTime = plainQuantity(model.plant->deadTime, "s");
  deadTime.u = std::sqrt(std::max(model.covariance(2, 2), 0.0));
  deadTime.dof = model.dof;
  return deadTime.value > *expandedUncertainty(deadTime);
}

}  // namespace

Simulation giveSimulation(StepResult& result, const HeaterControlInputs& inputs, const StepContext& context,
                          const HeaterModel& model, std::optional<double> target,
                          const std::vector<RuleSetting>& settings) {
  const std::string heater = inputs.heaterOf(context);
  const maths::DeadTimeModel& plant = *model.plant;
  Simulation simulation;
  if (!deadTimeIsKnown(model)) {
    result.addFinding(
        "dead-time-unknown", Severity::caution,
        say(Text::tr("The dead time of {0} s is not larger than its uncertainty, and every rule's gain "
                     "hangs on it: nothing is simulated or recommended. Log faster."),
            formatFixed(plant.deadTime, 2)));
    withholdTable(result, heater, settings, Text::tr("the dead time is not known well enough"));
    return simulation;
  }
  if (!target) {
    result.addFinding(
        "no-target", Severity::note,
        Text::tr("No settings are proposed yet: enter the target, and each rule is simulated up to "
                 "it."));
    withholdTable(result, heater, settings, Text::tr("there is no target to heat up to"));
    return simulation;
  }
  if (*target <= inputs.room) {
    throw Refusal{
        say(Text::tr("The target of {0} °C is not above the room's {1} °C; a higher one is needed."),
            formatNumber(*target), formatNumber(inputs.room))};
  }
  if (*target > inputs.room + plant.gain) {
    result.addFinding(
        "target-unreachable", Severity::fault,
        say(Text::tr("At full duty this heater ends at {0} °C and never reaches {1} °C. A lower "
                     "target gives settings."),
            formatFixed(inputs.room + plant.gain, 0), formatNumber(*target)));
    withholdTable(result, heater, settings, Text::tr("the heater cannot reach this target"));
    return simulation;
  }
  simulation.target = *target;
  double done = 0;
  for (const RuleSetting& setting : settings) {
    simulation.rules.push_back(simulate(setting, inputs, plant, *target));
    giveRule(result, heater, simulation.rules.back());
    done += 1;
    if (context.progress && !context.progress(done / static_cast<double>(settings.size()))) {
      throw Cancelled{};
    }
  }
  simulation.recommended = recommend(simulation.rules);
  giveRecommended(result, context, heater, simulation, settings);
  return simulation;
}

}  // namespace fettle
