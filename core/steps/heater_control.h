#pragma once
#include <optional>
#include <string>

#include "core/steps/contract/heaters.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// A log of one heater, or the numbers of a model somebody else found, and what its control should do.
struct HeaterControlInputs : HeaterInput {
  std::string mode;                                     ///< "step", "relay", "hold"
  CapturePointer log;                                   ///< time_s, temp_C and where known duty, target_C
  std::optional<double> maximum;                        ///< °C; blank: the sheet's
  std::optional<double> stepAt, dutyBefore, dutyAfter;  ///< of a step, where the log has no duty
  std::optional<double> dutyLow, dutyHigh;              ///< of a relay, where the log has no duty
  std::optional<double> hysteresis;                     ///< half band of the relay, °C
  std::optional<double> gain, timeConstant, deadTime;   ///< typed instead of a step's log
  std::optional<double> ultimateGain, ultimatePeriod;   ///< typed instead of a relay's log
  std::optional<double> closedLoopTime;                 ///< of simc; blank: the dead time
  std::optional<double> outputFullScale, period;
  double room = 25;
  std::optional<double> target;
  double fanDuty = 0.10;             ///< common practice, no source
  std::optional<double> riseWindow;  ///< s; blank: 15 for the hot end, 90 for others

  void describe(FieldList& fields);
};

/// How a heater answers, and the controller settings that follow.
///
/// `step`: a dead-time model fitted to the answer to one change of duty (heater_control/step_test.h).
/// `relay`: the ultimate point from a steady swing (heater_control/relay_test.h). `hold`: how well a target
/// is reached and held (heater_control/hold_test.h). From model or ultimate point follow the settings of
/// the published rules (heater_control/rules.h), from the model also a simulated heating-up for each of
/// them and the recommended one (heater_control/simulation.h). A log with duty gives the slowest rise at
/// full duty and from it a guard (heater_control/guard.h). Every result bears the heater's name in front.
StepResult evaluate(const HeaterControlInputs& inputs, const StepContext& context);

Step heaterControlStep();

}  // namespace fettle
