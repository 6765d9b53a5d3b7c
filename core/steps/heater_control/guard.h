#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"
#include "core/steps/heater_control/log.h"

namespace fettle {

/// Gives `slowest_rise_C`, the least rise over any `rise_window_s` with a duty of 0.95 or more throughout,
/// and `guard_rise_C`, half of it: what a runaway guard may ask for in that time without stopping a heater
/// that is well. A lower duty is never scaled up. Withheld without a log, a duty or such a stretch, and
/// when the slowest rise is not above zero.
void giveGuard(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
               const std::optional<HeaterLog>& log);

/// What a log at full duty gives.
std::vector<ResultId> guardResults(const std::string& heater);

}  // namespace fettle
