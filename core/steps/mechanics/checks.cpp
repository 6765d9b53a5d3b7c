#include "core/steps/mechanics/checks.h"

#include <map>
#include <string>

#include "core/measure/text.h"
#include "core/steps/contract/step.h"

namespace fettle {
namespace {

/// Answered items: key to the answer.
std::map<std::string, ChecklistAnswer> answered(const std::vector<ChecklistAnswer>& answers) {
  std::map<std::string, ChecklistAnswer> known;
  for (const auto& answer : answers) {
    if (!answer.ok) {
      continue;
    }
    const auto [before, added] = known.emplace(answer.item, answer);
    if (!added && before->second.ok != answer.ok) {
      throw Refusal{
          say(Text::tr("Checks: {0} is answered both yes and no; one answer is needed."), answer.item)};
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
                    conductors ? "safety" : "");
}

}  // namespace

std::vector<Choice> mechanicsItems() {
  return {
      {"transport_locks", Text::tr("Transport locks and ties are out")},
      {"parts_and_bolts", Text::tr("Parts are complete and bolts tight, against the list")},
      {"diagonals", Text::tr("Diagonals of every frame face are measured and alike")},
      {"gantry", Text::tr("Gantry is parallel, both z ends at equal height")},
      {"grub_screws", Text::tr("Grub screws sit on flats and are locked")},
      {"couplings", Text::tr("Couplings are tight and not bottomed")},
      {"rails", Text::tr("Rails are clean and greased")},
      {"wheels", Text::tr("Wheels have no play and still turn by finger, if there are any")},
      {"belt_path", Text::tr("Belt path is straight and rubs on no flange")},
      {"cables", Text::tr("Cables and chains are free at all extremes of travel")},
      {"crimps", Text::tr("Crimps and ferrules are sound, no tinned strand is under a screw")},
  };
}

void giveChecks(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
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
  result.give("checks_done", static_cast<double>(known.size()), "1");
  result.give("checks_open", open, "1");
  result.give("checks_failed", failed, "1");
  result.judgements.push_back({"checks_failed",
                               failed > 0 ? Verdict::fail
                               : open > 0 ? Verdict::undecided
                                          : Verdict::pass,
                               {},
                               0});
  if (open > 0) {
    result.addFinding("checks-open", Severity::note, say(Text::tr("Not looked at yet: {0}."), openLabels));
  }
}

}  // namespace fettle
