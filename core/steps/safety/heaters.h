#pragma once
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/safety/inputs.h"

namespace fettle {

/// Results of the heaters (see safety.h). A heater with a blank in what it needs says so, and the load of
/// the supply waits for it, so that it is never given too small. A heater that comes twice is refused.
void judgeHeaters(StepResult& result, const SafetyInputs& inputs, const StepContext& context);

}  // namespace fettle
