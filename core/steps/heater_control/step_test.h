#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/maths/dead_time_model.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"
#include "core/steps/heater_control/log.h"
#include "core/steps/heater_control/rules.h"

namespace fettle {

/// The rows of a step test and the model fitted to them.
struct StepAnswer {
  double stepTime = 0, stepSize = 0;
  std::vector<double> time, temperature;  ///< rows up to the next change of duty
  maths::DeadTimeFit fit;
};

/// Fits first order plus dead time to the answer to one change of duty and gives `gain_C` = ΔT/Δduty,
/// `tau_s`, `theta_s` (from the row in which the duty changes) with standard errors, the duty taken as
/// exact. The change is that of the log's duty, else the typed one. Only rows up to a second change count
/// (`second-step`). Faults `no-rise` and `falling` give no model: the temperature must follow the duty by
/// more than 1.5 °C and five times its scatter at rest. Cautions: `unsteady-start` (drift over 1 °C a
/// minute, common practice, no source), `start-not-shown`, `step-too-large` (more than 0.9 of room to
/// maximum, where both are known), `step-too-short` (under θ + 3τ), `coarse-log`. What is blank is waited
/// for. Throws Refusal when the duty does not change or too few rows follow.
/// @param maximum highest temperature allowed, °C
std::optional<StepAnswer> giveStepTest(StepResult& result, const HeaterControlInputs& inputs,
                                       const std::string& heater, const HeaterLog& log,
                                       std::optional<double> maximum);

/// The fitted model with its covariance, as the rules use it.
HeaterModel modelOf(const StepAnswer& answer);

/// The typed model, given under the same names; none while a number of it is blank or refused.
std::optional<HeaterModel> giveTypedModel(StepResult& result, const HeaterControlInputs& inputs,
                                          const std::string& heater);

/// What a step test gives before the rules.
std::vector<ResultId> stepTestResults(const std::string& heater);

}  // namespace fettle
