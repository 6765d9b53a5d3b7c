#include "core/history/gates.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"

namespace fettle {
namespace {

/// What is known of a step that others wait for.
struct Known {
  bool anything = false;
  std::string problem;  ///< its entries were refused
  std::vector<Finding> findings;
};

/// The run that counts for a gate: the last accepted one up to this session, as it was signed; while none
/// is, the last with entries. A run begun beside an accepted one opens and closes nothing.
Known knownOf(const History& history, const std::string& step, RecordId session) {
  if (const StepRun* accepted = history.lastAccepted(step, session);
      accepted && !accepted->signedResult.empty()) {
    return {true, {}, findingsFromJson(accepted->signedResult)};
  }
  Known known;
  for (const auto& run : history.runs) {
    const auto evaluated = history.evaluated.find(run.id);
    if (run.step == step && run.session <= session && !run.inputs.empty() &&
        evaluated != history.evaluated.end()) {
      known = {true, evaluated->second.problem, evaluated->second.result.findings};
    }
  }
  return known;
}

/// Why a step closes a gate: its entries were refused, so that nothing is known, or it has a fault (of this
/// code, if one is given).
std::optional<std::string> whyClosed(const Known& known, const std::string& code = {}) {
  if (!known.problem.empty()) {
    return known.problem;
  }
  const auto fault =
      std::find_if(known.findings.begin(), known.findings.end(), [&](const Finding& finding) {
        return finding.severity == Severity::fault && (code.empty() || finding.code == code);
      });
  return fault == known.findings.end() ? std::nullopt : std::optional(fault->text);
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
    const Known known = knownOf(history, safetyKey, session);
    const auto open = known.anything ? whyClosed(known, "critical-open")
                                     : std::optional(Text::tr("none of its critical items is ticked yet."));
    if (open) {
      return gateOf(safetyKey, *open);
    }
  }
  if (waitsForPowerUp(step)) {
    if (const auto fault = whyClosed(knownOf(history, powerUpKey, session))) {
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
