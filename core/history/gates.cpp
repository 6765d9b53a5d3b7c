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

std::optional<double> acceptedNumber(const std::map<std::string, SettingValues>& accepted,
                                     const std::string& step, const std::string& id) {
  const auto results = accepted.find(step);
  if (results == accepted.end()) {
    return std::nullopt;
  }
  const auto value = results->second.find(id);
  return value == results->second.end() ? std::nullopt : value->second.number;
}

bool waitsForSafety(const Step& step) {
  return step.key == "power-up" && findStep("safety");
}

bool waitsForPowerUp(const Step& step) {
  return (step.heats || step.moves) && step.key != "power-up" && findStep("power-up");
}

}  // namespace

std::optional<std::string> closedGate(const History& history, const Step& step, RecordId session) {
  if (waitsForSafety(step)) {
    const Evaluated* safety = lastEvaluation(history, "safety", session);
    const auto open = safety ? whyClosed(*safety, "critical-open")
                             : std::optional(Text::tr("none of its critical items is ticked yet."));
    if (open) {
      return say(Text::tr("Blocked by Safety and wiring: {0}"), *open);
    }
  }
  if (waitsForPowerUp(step)) {
    const Evaluated* powerUp = lastEvaluation(history, "power-up", session);
    if (const auto fault = powerUp ? whyClosed(*powerUp) : std::nullopt) {
      return say(Text::tr("Blocked by Power-up check: {0}"), *fault);
    }
  }
  return std::nullopt;
}

std::optional<Gate> closedGate(const std::map<std::string, SettingValues>& accepted, const Step& step) {
  if (waitsForSafety(step)) {
    const auto open = acceptedNumber(accepted, "safety", "critical_open");
    if (!open) {
      return Gate{Text::tr("Blocked by Safety and wiring: no accepted result says that its critical items "
                           "are closed."),
                  "safety"};
    }
    if (*open > 0) {
      return Gate{say(Text::tr("Blocked by Safety and wiring: critical items still open: {0}."),
                      formatNumber(*open)),
                  "safety"};
    }
  }
  if (waitsForPowerUp(step)) {
    const auto faults = acceptedNumber(accepted, "power-up", "faults");
    if (faults && *faults > 0) {
      return Gate{
          say(Text::tr("Blocked by Power-up check: faults found there: {0}."), formatNumber(*faults)),
          "power-up"};
    }
  }
  return std::nullopt;
}

}  // namespace fettle
