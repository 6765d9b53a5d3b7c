#include "core/history/gates.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"

namespace fettle {
namespace {

/// The evaluation that counts for a gate: of the last run with entries up to this session.
const Evaluated* lastEvaluation(const History& history, const std::string& step, RecordId session) {
  const Evaluated* last = nullptr;
  for (const auto& run : history.runs) {
    const auto evaluated = history.evaluated.find(run.id);
    if (run.step == step && run.session <= session && !run.inputs.empty() &&
        evaluated != history.evaluated.end()) {
      last = &evaluated->second;
    }
  }
  return last;
}

const Finding* firstFault(const StepResult& result, const std::string& code) {
  const auto found =
      std::find_if(result.findings.begin(), result.findings.end(), [&](const Finding& finding) {
        return finding.severity == Severity::fault && (code.empty() || finding.code == code);
      });
  return found == result.findings.end() ? nullptr : &*found;
}

/// Why an evaluation closes a gate: its entries were refused, so that nothing is known, or it has a fault
/// (of this code, if one is given).
std::optional<std::string> whyClosed(const Evaluated& evaluated, const std::string& code = {}) {
  if (!evaluated.problem.empty()) {
    return evaluated.problem;
  }
  const Finding* fault = firstFault(evaluated.result, code);
  return fault ? std::optional(fault->text) : std::nullopt;
}

constexpr const char* safetyKey = "safety";
constexpr const char* powerUpKey = "power-up";

bool waitsForSafety(const Step& step) {
  return step.key == powerUpKey && findStep(safetyKey);
}

bool waitsForPowerUp(const Step& step) {
  return (step.heats || step.moves) && step.key != powerUpKey && findStep(powerUpKey);
}

Gate gateOf(const char* waitsFor, const std::string& why) {
  return {say(Text::tr("Blocked by {0}: {1}"), stepName(waitsFor), why), waitsFor};
}

}  // namespace

std::optional<Gate> closedGate(const History& history, const Step& step, RecordId session) {
  if (waitsForSafety(step)) {
    const Evaluated* last = lastEvaluation(history, safetyKey, session);
    const auto open = last ? whyClosed(*last, "critical-open")
                           : std::optional(Text::tr("none of its critical items is ticked yet."));
    if (open) {
      return gateOf(safetyKey, *open);
    }
  }
  if (waitsForPowerUp(step)) {
    const Evaluated* last = lastEvaluation(history, powerUpKey, session);
    if (const auto fault = last ? whyClosed(*last) : std::nullopt) {
      return gateOf(powerUpKey, *fault);
    }
  }
  return std::nullopt;
}

std::optional<Gate> closedGate(const StepContext& context, const Step& step) {
  if (waitsForSafety(step)) {
    const auto open = context.acceptedNumber(safetyKey, "critical_open");
    if (!open) {
      return gateOf(safetyKey, Text::tr("no accepted result says that its critical items are closed."));
    }
    if (*open > 0) {
      return gateOf(safetyKey, say(Text::tr("critical items still open: {0}."), formatNumber(*open)));
    }
  }
  if (waitsForPowerUp(step)) {
    const auto faults = context.acceptedNumber(powerUpKey, "faults");
    if (faults && *faults > 0) {
      return gateOf(powerUpKey, say(Text::tr("faults found there: {0}."), formatNumber(*faults)));
    }
  }
  return std::nullopt;
}

}  // namespace fettle
