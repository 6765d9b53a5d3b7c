#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/maths/control_loop.h"
#include "core/steps/heater_control/rules.h"

namespace fettle {

/// One rule's simulated heating-up and what follows when the fan starts.
struct SimulatedRule {
  std::string key, name;
  maths::LoopResponse response;
  double overshoot = 0;            ///< °C
  std::optional<double> settling;  ///< s to stay within ±1 °C
  std::optional<double> dip;       ///< °C below target after the fan; none when it never settled
  double fanFrom = 0;              ///< s
};

struct Simulation {
  double target = 0;
  std::vector<SimulatedRule> rules;
  std::optional<std::size_t> recommended;
};

/// Simulates each setting on the model's plant, which must be there, from room to target (see
/// maths/control_loop.h): sampled every `period_s`, blank: 1/500 of the dead time, as good as continuous.
/// At the later of 900 s and 300 s after settling the fan takes `fan_duty` from the duty. Gives
/// `<rule>.overshoot_C`, `settling_s` and `dip_C`, and `recommended` with its `reason`: of the rules that
/// settle with an overshoot of 2 °C or less the one with the smallest dip, if there is none the least
/// overshoot. The recommended gains, at full scale where that is typed, are proposed. Without a target
/// nothing is simulated (note `no-target`), nor with a dead time that is not larger than its U (caution
/// `dead-time-unknown`): it makes every gain a guess; a target beyond room + gain is the fault
/// `target-unreachable` and gives no table.
Simulation giveSimulation(StepResult& result, const HeaterControlInputs& inputs, const StepContext& context,
                          const HeaterModel& model, std::optional<double> target,
                          const std::vector<RuleSetting>& settings);

}  // namespace fettle
