#pragma once
#include <string>
#include <vector>

#include "core/fields/readings.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// Gives `open_items` and their list, notes those ticked without initials or time, and returns the critical
/// ones that are open, in words. An item is open while it is unanswered or any of its answers is "not ok".
std::vector<std::string> judgeChecks(StepResult& result, const std::vector<ChecklistAnswer>& answers);

}  // namespace fettle
