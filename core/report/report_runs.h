#pragma once
#include <string>
#include <vector>

#include "core/history/history.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// The runs that count for a step in a session, one for each heater or axis: the last with entries in the
/// session, else the last accepted before it.
std::vector<const StepRun*> decidingRuns(const History& history, const Step& step, RecordId session);

/// The result of a run; null when it was not evaluated, or its inputs were refused.
const StepResult* resultOf(const History& history, const StepRun& run);

/// Whether the user took a proposed setting over, and what was left then; null when not.
const Adoption* adoptionOf(const StepRun& run, const std::string& setting);

/// One line each: faults, verdicts that are not a pass, and changes proposed that nobody adopted.
std::vector<std::string> openPoints(const Step& step, const StepRun& run, const StepResult& result);

}  // namespace fettle
