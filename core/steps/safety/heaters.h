#pragma once
#include <optional>
#include <vector>

#include "core/steps/safety.h"

namespace fettle {

/// Results of the heaters (see safety.h). Rows with a blank in what they need are named in
/// `result.missing` and left out. Throws Refusal for a heater that comes twice.
void judgeHeaters(StepResult& result, const SafetyInputs& inputs, const StepContext& context);

}  // namespace fettle
