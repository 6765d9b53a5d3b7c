#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/heater_control/inputs.h"

namespace fettle {

/// How a heater answers, and the controller settings that follow.
///
/// `step`: a dead-time model fitted to the answer to one change of duty (heater_control/step_test.h).
/// `relay`: the ultimate point from a steady swing (heater_control/relay_test.h). `hold`: how well a target
/// is reached and held (heater_control/hold_test.h). From model or ultimate point follow the settings of
/// the published rules (heater_control/rules.h), from the model also a simulated heating-up for each of
/// them and the proposed one (heater_control/simulation.h). A log with duty gives the slowest rise at
/// full duty and from it a guard (heater_control/guard.h). Every result bears the heater's name in front.
/// Refused: a log as a whole, its duty or its target alone (heater_control/log.h); a test that its own part
/// refuses leaves what the others give.
StepResult evaluate(const HeaterControlInputs& inputs, const StepContext& context);

Step heaterControlStep();

}  // namespace fettle
