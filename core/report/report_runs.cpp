#include "core/report/report_runs.h"

#include <algorithm>
#include <map>

#include "core/measure/text.h"
#include "core/report/report_words.h"
#include "core/steps/contract/wording.h"

namespace fettle {

std::vector<const StepRun*> decidingRuns(const History& history, const Step& step, RecordId session) {
  std::map<std::string, const StepRun*> bySubject;
  for (const auto& run : history.runs) {
    const bool now = run.session == session && !run.inputs.empty();
    const bool before = run.session < session && run.accepted();
    if (run.step == step.key && (now || before)) {
      bySubject[run.subject] = &run;  // sessions come in order
    }
  }
  std::vector<const StepRun*> runs;
  runs.reserve(bySubject.size());
  for (const auto& [subject, run] : bySubject) {
    runs.push_back(run);
  }
  return runs;
}

const StepResult* resultOf(const History& history, const StepRun& run) {
  const auto evaluated = history.evaluated.find(run.id);
  const bool usable = evaluated != history.evaluated.end() && evaluated->second.problem.empty();
  return usable ? &evaluated->second.result : nullptr;
}

const Adoption* adoptionOf(const StepRun& run, const std::string& setting) {
  const auto found = std::find_if(run.adopted.begin(), run.adopted.end(),
                                  [&](const Adoption& adoption) { return adoption.setting == setting; });
  return found == run.adopted.end() ? nullptr : &*found;
}

std::vector<std::string> openPoints(const Step& step, const StepRun& run, const StepResult& result) {
  const Wording wording(step, &result, subjectName(step, run.inputs, run.subject));
  std::vector<std::string> points;
  for (const auto& finding : result.findings) {
    if (finding.severity == Severity::fault) {
      points.push_back(severityText(finding.severity) + ": " + finding.text);
    }
  }
  for (const auto& judged : result.judgements) {
    if (judged.verdict == Verdict::fail || judged.verdict == Verdict::undecided) {
      points.push_back(verdictText(judged.verdict) + ": " + wording.label(judged.id));
    }
  }
  for (const auto& proposal : result.settings) {
    if (!adoptionOf(run, proposal.id) && proposal.proposed != proposal.asFound) {
      points.push_back(say(Text::tr("– Not adopted: {0}"), wording.label(proposal.id)));
    }
  }
  return points;
}

}  // namespace fettle
