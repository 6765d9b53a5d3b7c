#include "core/steps/heater_control/simulation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/hold_test.h"
#include "core/steps/heater_control/results.h"

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
  const auto& key = keysOf<HeaterControlResults>();
  const Name name(rule.key, rule.name);
  result.give(key.simulatedOvershoot(heater, name), rule.overshoot);
  if (rule.settling) {
    result.give(key.simulatedSettling(heater, name), *rule.settling);
    result.give(key.dip(heater, name), *rule.dip);
  } else {
    const std::string why = Text::tr("the simulated loop does not come to stay within ±1 °C");
    result.withhold(key.simulatedSettling(heater, name), why);
    result.withhold(key.dip(heater, name), why);
  }
}

std::optional<std::size_t> proposedOf(const std::vector<SimulatedRule>& rules) {
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

void giveProposed(StepResult& result, const std::string& heater, const Simulation& simulation,
                  const std::vector<RuleSetting>& settings) {
  if (!simulation.proposed) {
    result.addFinding(
        "no-rule-settles", Severity::caution,
        Text::tr("No rule's simulated loop settles, so none is proposed. A longer time constant "
                 "wanted of the closed loop makes SIMC calmer."),
        {}, "tau_c_s");
    return;
  }
  const auto& key = keysOf<HeaterControlResults>();
  const SimulatedRule& best = simulation.rules[*simulation.proposed];
  result.give(key.proposed(heater), best.key);
  result.give(key.reason(heater), reasonFor(best));
  if (const auto& gains = settings[*simulation.proposed].gains) {
    result.propose(key.proportionalSetting(heater), gains->proportional);
    result.propose(key.integralSetting(heater), gains->integral);
    result.propose(key.derivativeSetting(heater), gains->derivative);
  }
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

void noteDeadTime(StepResult& result, double deadTime) {
  result.addFinding(
      "dead-time-unknown", Severity::caution,
      say(Text::tr("The dead time of {0} s is not larger than its uncertainty, and every rule's gain "
                   "hangs on it: nothing is simulated or proposed. Log faster."),
          formatFixed(deadTime, 2)),
      {}, "log");
}

void noteUnreachable(StepResult& result, double highest, double target) {
  result.addFinding(
      "target-unreachable", Severity::fault,
      say(Text::tr("At full duty this heater ends at {0} °C and never reaches {1} °C. A lower "
                   "target gives settings."),
          formatFixed(highest, 0), formatNumber(target)),
      {}, "target_C");
}

/// Whether the target lies above the room and within reach; says why not.
bool isReachable(StepResult& result, const std::string& heater, const std::vector<RuleSetting>& settings,
                 double room, double gain, double target) {
  if (target <= room) {
    const Refusal refusal{
        say(Text::tr("The target of {0} °C is not above the room's {1} °C; a higher one is needed."),
            formatNumber(target), formatNumber(room)),
        "target_C"};
    result.refuse(refusal);
    withholdRefused(result, simulationResults(heater, settings), refusal.sentence, refusal.at);
    return false;
  }
  if (target > room + gain) {
    noteUnreachable(result, room + gain, target);
    withholdSimulation(result, heater, settings, Text::tr("the heater cannot reach this target"));
    return false;
  }
  return true;
}

std::vector<NeededEntry> entriesOf(const HeaterControlInputs& inputs, std::optional<double> target) {
  std::vector<NeededEntry> entries{
      {"target_C", target}, {"room_C", inputs.room}, {"fan_duty", inputs.fanDuty}};
  if (inputs.period) {
    entries.push_back({"period_s", inputs.period});
  }
  return entries;
}

}  // namespace

std::vector<ResultId> simulationResults(const std::string& heater,
                                        const std::vector<RuleSetting>& settings) {
  const auto& key = keysOf<HeaterControlResults>();
  std::vector<ResultId> ids;
  for (const RuleSetting& setting : settings) {
    const Name name(setting.key, setting.name);
    ids.push_back(key.simulatedOvershoot(heater, name));
    ids.push_back(key.simulatedSettling(heater, name));
    ids.push_back(key.dip(heater, name));
  }
  return ids;
}

void withholdSimulation(StepResult& result, const std::string& heater,
                        const std::vector<RuleSetting>& settings, const std::string& why) {
  for (const ResultId& id : simulationResults(heater, settings)) {
    result.withhold(id, why);
  }
}

Simulation giveSimulation(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
                          const HeaterModel& model, std::optional<double> target,
                          const std::vector<RuleSetting>& settings, const StepContext& context) {
  Simulation simulation;
  if (!deadTimeIsKnown(model)) {
    noteDeadTime(result, model.plant->deadTime);
    withholdSimulation(result, heater, settings, Text::tr("the dead time is not known well enough"));
    return simulation;
  }
  if (!areEntered(result, simulationResults(heater, settings), entriesOf(inputs, target)) ||
      !isReachable(result, heater, settings, inputs.room, model.plant->gain, *target)) {
    return simulation;
  }
  simulation.target = *target;
  double done = 0;
  for (const RuleSetting& setting : settings) {
    simulation.rules.push_back(simulate(setting, inputs, *model.plant, *target));
    giveRule(result, heater, simulation.rules.back());
    done += 1;
    if (context.progress && !context.progress(done / static_cast<double>(settings.size()))) {
      throw Cancelled{};
    }
  }
  simulation.proposed = proposedOf(simulation.rules);
  giveProposed(result, heater, simulation, settings);
  return simulation;
}

}  // namespace fettle
