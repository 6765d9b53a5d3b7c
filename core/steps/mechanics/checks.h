#pragma once
#include <vector>

#include "core/fields/readings.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// Gives `checks_done`, `checks_open` and `checks_failed` out of all items. `checks_failed` is judged: fail
/// with one or more, undecided while items are open, else pass. One finding `check-failed` for each failed
/// item (a fault for locks left in and for conductors, which move or burn; else a caution), one
/// `checks-open` that names the open ones. Refused: an item that is answered twice differently.
void giveChecks(StepResult& result, const std::vector<ChecklistAnswer>& answers);

}  // namespace fettle
