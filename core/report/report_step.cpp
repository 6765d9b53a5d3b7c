#include "core/report/report_step.h"

#include "core/history/evaluation.h"
#include "core/measure/text.h"
#include "core/report/report_readings.h"
#include "core/report/report_results.h"
#include "core/report/report_runs.h"
#include "core/report/report_words.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

/// Overridden gates and steps said not to be affected, with the reason written then.
ReportBlocks decisions(const History& history, const Step& step, RecordId session) {
  ReportBlocks blocks;
  for (const auto& mark : history.marks) {
    if (mark.step == step.key && mark.session == session) {
      const std::string sentence = mark.kind == StepMark::Kind::overridden
                                       ? Text::tr("Done before its way was free, {0}: {1}")
                                       : Text::tr("Said not to be affected, {0}: {1}");
      blocks.emplace_back(Caution{say(sentence, minuteOf(mark.date), mark.reason)});
    }
  }
  return blocks;
}

/// The runs of the session that say something, else those that still stand from before.
std::vector<const StepRun*> runsToShow(const History& history, const Step& step, RecordId session) {
  std::vector<const StepRun*> shown;
  for (const auto* run : history.runsOf(step.key, session)) {
    if (!run->inputs.empty() || !run->notes.empty() || run->accepted()) {
      shown.push_back(run);
    }
  }
  return shown.empty() ? decidingRuns(history, step, session) : shown;
}

std::string runTitle(const History& history, const Step& step, const StepRun& run, std::size_t number,
                     std::size_t count, RecordId session) {
  std::string title = count == 1 ? Text::tr("Run") : say(Text::tr("Run {0} of {1}"), number, count);
  if (const std::string subject = subjectName(step, run.inputs, run.subject); !subject.empty()) {
    title += ", " + subject;
  }
  const Session* earlier = run.session == session ? nullptr : history.session(run.session);
  if (earlier) {
    title += ", " + say(Text::tr("session of {0}"), dayOf(earlier->date));
  }
  const std::string state =
      run.accepted() ? say(Text::tr("accepted {0}"), minuteOf(run.acceptedOn)) : Text::tr("not accepted");
  return title + ": " + state;
}

void addRun(ReportBlocks& blocks, const History& history, const Step& step, const StepRun& run) {
  append(blocks, reportReadings(step, run.inputs));
  const auto evaluated = history.evaluated.find(run.id);
  if (evaluated != history.evaluated.end()) {
    if (!isCurrent(evaluated->second, run)) {
      blocks.emplace_back(Caution{Text::tr("Readings were changed after this evaluation.")});
    }
    if (usesOlderValues(evaluated->second, history, run)) {
      blocks.emplace_back(
          Caution{Text::tr("Evaluated with older values of the machine sheet, of the "
                           "settings as found or of other steps.")});
    }
    append(blocks, reportResults(step, run, evaluated->second));
  }
  if (!run.notes.empty()) {
    blocks.emplace_back(Heading{4, Text::tr("Notes")});
    blocks.emplace_back(Paragraph{run.notes, false});
  }
}

}  // namespace

ReportBlocks reportStep(const History& history, const Step& step, int number, RecordId session) {
  const auto runs = runsToShow(history, step, session);
  ReportBlocks decided = decisions(history, step, session);
  if (runs.empty() && decided.empty()) {
    return {};
  }
  ReportBlocks blocks{Heading{2, std::to_string(number) + " " + step.name}, Paragraph{step.purpose, true}};
  if (!step.caution.empty()) {
    blocks.emplace_back(Caution{step.caution});
  }
  append(blocks, std::move(decided));
  for (std::size_t i = 0; i < runs.size(); ++i) {
    blocks.emplace_back(Heading{3, runTitle(history, step, *runs[i], i + 1, runs.size(), session)});
    addRun(blocks, history, step, *runs[i]);
  }
  return blocks;
}

}  // namespace fettle
