#include "core/steps/mechanics/checks.h"

#include <map>
#include <string>

#include "core/measure/text.h"
#include "core/steps/mechanics/inputs.h"
#include "core/steps/mechanics/results.h"

namespace fettle {
namespace {

std::string labelOf(const std::string& item) {
  return labelOfName({{"item", mechanicsItems()}}, "item", item);
}

/// Answered items: key to the answer.
std::map<std::string, ChecklistAnswer> answered(const std::vector<ChecklistAnswer>& answers) {
  std::map<std::string, ChecklistAnswer> known;
  for (const auto& answer : answers) {
    if (!answer.ok || answer.item.empty()) {
      continue;
    }
    const auto [before, added] = known.emplace(answer.item, answer);
    if (!added && before->second.ok != answer.ok) {
      throw Refusal{say(Text::tr("Checks: \"{0}\" is answered both yes and no; one answer is needed."),
                        labelOf(answer.item)),
                    "checks"};
    }
  }
  return known;
}

void noteFailed(StepResult& result, const Choice& item, const ChecklistAnswer& answer) {
  const bool conductors = item.key == "crimps" || item.key == "cables";
  const bool dangerous = conductors || item.key == "transport_locks";
  const std::string text = answer.remark.empty()
                               ? say(Text::tr("Not in order: {0}."), item.label)
                               : say(Text::tr("Not in order: {0} ({1})."), item.label, answer.remark);
  result.addFinding("check-failed", dangerous ? Severity::fault : Severity::caution, text,
                    conductors ? "safety" : "", "checks");
}

}  // namespace

void giveChecks(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
  const auto& key = keysOf<MechanicsResults>();
  result.attempt({key.checksDone, key.checksOpen, key.checksFailed}, [&] {
    const auto known = answered(answers);
    int failed = 0, open = 0;
    std::string openLabels;
    for (const Choice& item : mechanicsItems()) {
      const auto found = known.find(item.key);
      if (found == known.end()) {
        ++open;
        openLabels += (openLabels.empty() ? "" : "; ") + item.label;
      } else if (!*found->second.ok) {
        ++failed;
        noteFailed(result, item, found->second);
      }
    }
    result.give(key.checksDone, static_cast<double>(known.size()));
    result.give(key.checksOpen, open);
    result.give(key.checksFailed, failed);
    const Verdict verdict = failed > 0 ? Verdict::fail : open > 0 ? Verdict::undecided : Verdict::pass;
    result.judge(key.checksFailed, {verdict}, {std::nullopt, 0.0});
    if (open > 0) {
      result.addFinding("checks-open", Severity::note, say(Text::tr("Not looked at yet: {0}."), openLabels),
                        {}, "checks");
    }
  });
}

}  // namespace fettle
