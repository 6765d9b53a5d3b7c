#include "core/history/gates.h"

#include <algorithm>
#include <functional>

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

/// What keeps a step from being done: why safety, or why power-up, is not through yet.
std::optional<std::string> gateOf(const Step& step,
                                  const std::function<std::optional<std::string>()>& safetyOpen,
                                  const std::function<std::optional<std::string>()>& powerUpFault) {
  if (step.key == "power-up" && findStep("safety")) {
    if (const auto open = safetyOpen()) {
      return say(Text::tr("Blocked by Safety and wiring: {0}"), *open);
    }
  }
  if ((step.heats || step.moves) && step.key != "power-up" && findStep("power-up")) {
    if (const auto fault = powerUpFault()) {
      return say(Text::tr("Blocked by Power-up check: {0}"), *fault);
    }
  }
  return std::nullopt;
}

std::string nothingTicked() {
  return Text::tr("none of its critical items is ticked yet.");
}

/// An accepted count; none when it is not known.
std::optional<double> countIn(const std::map<std::string, SettingValues>& accepted, const char* step,
                              const char* id) {
  const auto results = accepted.find(step);
  if (results == accepted.end()) {
    return std::nullopt;
  }
  const auto count = results->second.find(id);
  return count == results->second.end() ? std::nullopt : count->second.number;
}

}  // namespace

std::optional<std::string> closedGate(const History& history, const Step& step, RecordId session) {
  return gateOf(
      step,
      [&]() -> std::optional<std::string> {
        const Evaluated* safety = lastEvaluation(history, "safety", session);
        return safety ? whyClosed(*safety, "critical-open") : nothingTicked();
      },
      [&]() -> std::optional<std::string> {
        const Evaluated* powerUp = lastEvaluation(history, "power-up", session);
        return powerUp ? whyClosed(*powerUp) : std::nullopt;
      });
}

std::optional<std::string> closedGate(const std::map<std::string, SettingValues>& accepted,
                                      const Step& step) {
  return gateOf(
      step,
      [&]() -> std::optional<std::string> {
        const auto open = countIn(accepted, "safety", "critical_open");
        if (!open) {
          return nothingTicked();
        }
        return *open > 0 ? std::optional(say(Text::tr("critical items open: {0}."), *open)) : std::nullopt;
      },
      [&]() -> std::optional<std::string> {
        const auto faults = countIn(accepted, "power-up", "faults");
        return faults && *faults > 0 ? std::optional(say(Text::tr("its faults: {0}."), *faults))
                                     : std::nullopt;
      });
}

}  // namespace fettle
