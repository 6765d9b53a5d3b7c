#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/maths/control_loop.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"
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
  std::optional<std::size_t> proposed;  ///< of the rules
};

/// Simulates each setting on the model's plant, which must be there, from room to target (see
/// maths/control_loop.h): sampled every `period_s`, blank: 1/500 of the dead time, as good as continuous.
/// At the later of 900 s and 300 s after settling the fan takes `fan_duty` from the duty. Gives
/// `<rule>.overshoot_C`, `settling_s` and `dip_C`, and `proposed` with its `reason`: of the rules that
/// settle with an overshoot of 2 °C or less the one with the smallest dip, if there is none the least
/// overshoot. Its gains, at full scale where that is typed, are proposed as settings. Nothing is simulated
/// without a target or with a refused entry, nor with a dead time that is not larger than its U (caution
/// `dead-time-unknown`): it makes every gain a guess; a target not above the room is refused; one beyond
/// room + gain is the fault `target-unreachable` and gives no table.
/// @param target °C; NaN when it was refused
Simulation giveSimulation(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
                          const HeaterModel& model, std::optional<double> target,
                          const std::vector<RuleSetting>& settings, const StepContext& context);

/// Overshoot, settling and dip of these rules.
std::vector<ResultId> simulationResults(const std::string& heater,
                                        const std::vector<RuleSetting>& settings);

/// Withholds them all for one reason.
void withholdSimulation(StepResult& result, const std::string& heater,
                        const std::vector<RuleSetting>& settings, const std::string& why);

}  // namespace fettle
