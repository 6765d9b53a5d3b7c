#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"
#include "core/steps/heater_control/log.h"
#include "core/steps/heater_control/rules.h"

namespace fettle {

/// The last four cycles of a relay test.
struct RelaySwing {
  std::vector<double> starts;  ///< five times at which the heater is switched on
  double low = 0, high = 0;    ///< mean lowest and highest temperature of a cycle
  std::optional<double> target;
  HeaterModel model;
  /// For the simulation; none when the log has no duty, or no such heater could swing like this.
  std::optional<maths::DeadTimeModel> plant;
};

/// Gives `Ku` = 4d/(π·sqrt(a² − ε²)) and `Pu` from the last four cycles, which run from one switching on to
/// the next: in the duty, or without one where the temperature falls through the target. d = half of high
/// less low duty, a = mean of the cycles' half peak to peak, ε = half the hysteresis. u from the scatter of
/// the four cycles; the period also knows the rows no better than their distance. Caution
/// `relay-asymmetric` when the heater is on for less than 0.35 or more than 0.65 of the time or the mean
/// temperature is over 1 °C from the target. `plant`, where the log has a duty: the gain from the balance
/// of the whole cycles, mean temperature above the room over mean duty, and the lag and dead time that put
/// the ultimate point where the relay found it. What is blank is waited for. Throws Refusal for fewer
/// than four cycles, for cycles whose period or amplitude differ by over 10 %, and for a swing inside its
/// hysteresis.
std::optional<RelaySwing> giveRelayTest(StepResult& result, const HeaterControlInputs& inputs,
                                        const std::string& heater, const HeaterLog& log);

/// The typed ultimate point, given under the same names; none while a number of it is blank or refused.
std::optional<HeaterModel> giveTypedPoint(StepResult& result, const HeaterControlInputs& inputs,
                                          const std::string& heater);

/// What a relay test gives before the rules.
std::vector<ResultId> relayTestResults(const std::string& heater);

}  // namespace fettle
