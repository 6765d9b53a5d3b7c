#include "core/steps/safety/checks.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/safety/inputs.h"
#include "core/steps/safety/results.h"

namespace fettle {
namespace {

enum class Answer { none, ok, notOk };

bool isCritical(const std::string& item) {
  return item == "earth_bond" || item == "fuses" || item == "emergency_stop" || item == "heater_clamped";
}

Answer answerOf(const std::string& item, const std::vector<ChecklistAnswer>& answers) {
  Answer all = Answer::none;
  for (const auto& answer : answers) {
    if (answer.item == item && answer.ok) {
      all = !*answer.ok || all == Answer::notOk ? Answer::notOk : Answer::ok;
    }
  }
  return all;
}

void noteUnsigned(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
  std::vector<std::string> names;
  for (const auto& item : safetyItems()) {
    const bool bare = std::any_of(answers.begin(), answers.end(), [&](const ChecklistAnswer& answer) {
      return answer.item == item.key && answer.ok && (answer.initials.empty() || answer.time.empty());
    });
    if (bare) {
      names.push_back(item.label);
    }
  }
  if (!names.empty()) {
    result.addFinding(
        "not-signed", Severity::caution,
        say(Text::tr("Answered without initials or time: {0}."), fmt::to_string(fmt::join(names, "; "))),
        {}, "checks");
  }
}

}  // namespace

std::vector<std::string> judgeChecks(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
  std::vector<std::string> open, critical;
  for (const auto& item : safetyItems()) {
    const Answer answer = answerOf(item.key, answers);
    if (answer == Answer::ok) {
      continue;
    }
    const std::string words =
        say(answer == Answer::none ? Text::tr("{0}: not answered") : Text::tr("{0}: not ok"), item.label);
    open.push_back(words);
    if (isCritical(item.key)) {
      critical.push_back(words);
    }
  }
  const auto& key = keysOf<SafetyResults>();
  result.give(key.openItems, static_cast<double>(open.size()));
  if (!open.empty()) {
    result.give(key.openList, fmt::to_string(fmt::join(open, "; ")));
    result.addFinding("checks-open", Severity::caution,
                      say(Text::tr("{0} of {1} items are open: {2}."), open.size(), safetyItems().size(),
                          fmt::to_string(fmt::join(open, "; "))),
                      {}, "checks");
  }
  noteUnsigned(result, answers);
  return critical;
}

}  // namespace fettle
