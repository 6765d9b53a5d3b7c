#include "core/history/gates.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/catalogue.h"

namespace fettle {
namespace {

/// The result that counts for a gate: the last run with entries up to this session.
const StepResult* lastResult(const History& history, const std::string& step, RecordId session) {
  const StepResult* last = nullptr;
  for (const auto& run : history.runs) {
    const auto evaluated = history.evaluated.find(run.id);
    if (run.step == step && run.session <= session && !run.inputs.empty() &&
        evaluated != history.evaluated.end()) {
      last = &evaluated->second.result;
    }
  }
  return last;
}

const Finding* firstFinding(const StepResult* result, Severity severity, const std::string& code = {}) {
  if (!result) {
    return nullptr;
  }
  const auto found =
      std::find_if(result->findings.begin(), result->findings.end(), [&](const Finding& finding) {
        return finding.severity == severity && (code.empty() || finding.code == code);
      });
  return found == result->findings.end() ? nullptr : &*found;
}

}  // namespace

std::optional<std::string> closedGate(const History& history, const Step& step, RecordId session) {
  if (step.key == "power-up" && findStep("safety")) {
    if (const auto* open =
            firstFinding(lastResult(history, "safety", session), Severity::fault, "critical-open")) {
      return say(Text::tr("Blocked by Safety and wiring: {0}"), open->text);
    }
  }
  if ((step.heats || step.moves) && step.key != "power-up" && findStep("power-up")) {
    if (const auto* fault = firstFinding(lastResult(history, "power-up", session), Severity::fault)) {
      return say(Text::tr("Blocked by Power-up check: {0}"), fault->text);
    }
  }
  return std::nullopt;
}

}  // namespace fettle
