#pragma once
#include <optional>
#include <string>

#include "core/history/history.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// Why a step must not be done yet.
struct Gate {
  std::string sentence;
  std::string waitsFor;  ///< step key
};

/// The gate that keeps a step back; nothing when its way is free. `power-up` waits for the critical items
/// of `safety`, which are open while nobody answered them; whatever heats or moves waits while `power-up`
/// has a fault. Entries that were refused say nothing and close the gate. A gate whose step is not in the
/// catalogue does not block.
std::optional<Gate> closedGate(const History& history, const Step& step, RecordId session);

/// The same where no history is at hand, by the accepted results alone: `critical_open` of `safety`, which
/// counts as open while it is not given, and `faults` of `power-up`.
std::optional<Gate> closedGate(const StepContext& context, const Step& step);

}  // namespace fettle
