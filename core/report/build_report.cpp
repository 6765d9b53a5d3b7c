#include "core/report/build_report.h"

#include <algorithm>
#include <cmath>

#include "core/history/state.h"
#include "core/history/version.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_ending.h"
#include "core/report/report_runs.h"
#include "core/report/report_step.h"
#include "core/report/report_words.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/machine_sheet.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

std::string machineName(const History& history) {
  const auto name = history.machine.sheet.find("name");
  return name != history.machine.sheet.end() && name->is_string() ? name->get<std::string>()
                                                                  : std::string();
}

std::string hoursAndMinutes(double seconds) {
  const auto minutes = std::llround(seconds / 60);
  return minutes < 60 ? say(Text::tr("{0} min"), minutes)
                      : say(Text::tr("{0} h {1} min"), minutes / 60, minutes % 60);
}

ReportBlocks machineBlocks(const History& history) {
  KeyValues facts;
  for (const auto& field : machineSheetFields()) {
    const auto found = history.machine.sheet.find(field.key);
    if (found != history.machine.sheet.end() && !found->is_null()) {
      facts.pairs.emplace_back(field.label, withUnit(entryText(field, *found), field.unit));
    }
  }
  return {Heading{2, Text::tr("Machine")}, std::move(facts)};
}

ReportBlocks sessionBlocks(const Session& session) {
  KeyValues facts;
  const auto add = [&](std::string name, std::string value) {
    if (!value.empty()) {
      facts.pairs.emplace_back(std::move(name), std::move(value));
    }
  };
  add(Text::tr("Date"), minuteOf(session.date));
  add(Text::tr("Operator"), session.person);
  add(Text::tr("Reason"), session.reason);
  add(Text::tr("Filament"), session.filament);
  add(Text::tr("Print hours so far"), session.printHours ? formatNumber(*session.printHours) + " h" : "");
  add(Text::tr("Time at the bench"), session.benchSeconds > 0 ? hoursAndMinutes(session.benchSeconds) : "");
  return {Heading{2, Text::tr("Session")}, std::move(facts)};
}

Caution usualCaution() {
  return {
      Text::tr("Mains voltage, heat and moving parts can hurt. Guards stay on, hands stay out, and "
               "somebody stays with a machine that heats or moves for the first time. Work on the "
               "mains belongs to a qualified person; local codes come before anything said here.")};
}

/// State, value, verdict and date of what counts for a step.
ReportTable::Row overviewRow(const History& history, const Step& step, int number, RecordId session) {
  const StepStanding standing = standingOf(history, step, session);
  Verdict verdict = Verdict::none;
  std::string values, accepted;
  const bool namesOwner = std::any_of(step.headline.begin(), step.headline.end(),
                                      [](const auto& id) { return id.find('<') != std::string::npos; });
  for (const auto* run : decidingRuns(history, step, session)) {
    accepted = std::max(accepted, run->acceptedOn);
    const StepResult* result = resultOf(history, *run);
    const std::string text = result ? headlineText(step, *result) : "";
    verdict = worst(verdict, result ? result->verdict() : Verdict::none);
    if (!text.empty()) {
      const std::string subject = namesOwner ? "" : subjectName(step, run->inputs, run->subject);
      values += values.empty() ? "" : "\n";
      values += subject;
      values += subject.empty() ? "" : ": ";
      values += text;
    }
  }
  std::string remark = standing.why;
  if (remark.empty() && !accepted.empty()) {
    remark = say(Text::tr("accepted {0}"), dayOf(accepted));
  }
  if (standing.olderValues) {
    remark += (remark.empty() ? "" : "; ") + Text::tr("evaluated with older values");
  }
  return {{std::to_string(number), step.name, stateGlyph(standing.state) + " " + stateWord(standing.state),
           verdict == Verdict::none ? "" : verdictText(verdict), values, remark},
          false};
}

ReportBlocks overview(const History& history, RecordId session) {
  ReportTable table;
  table.columns = {{"#", true},
                   {Text::tr("Step"), false},
                   {Text::tr("State"), false},
                   {Text::tr("Verdict"), false},
                   {Text::tr("Value"), false},
                   {Text::tr("Remark"), false}};
  int number = 0;
  std::size_t done = 0;
  for (const auto& step : catalogue()) {
    const StepState state = standingOf(history, step, session).state;
    done += state == StepState::accepted || state == StepState::notAffected ? 1 : 0;
    table.rows.push_back(overviewRow(history, step, ++number, session));
  }
  const std::string summary =
      say(Text::tr("{0} of {1} steps are accepted and not due again."), done, catalogue().size());
  return {Heading{2, Text::tr("Where the steps stand")}, Paragraph{summary, false}, std::move(table),
          Paragraph{Text::tr("± stands before the expanded uncertainty U, brackets hold an interval, both "
                             "for 95 % (JCGM 100:2008). A verdict leaves a guard band at its limits "
                             "(ISO 14253-1); undecided means that U is too large to tell."),
                    true}};
}

ReportBlocks stepBlocks(const History& history, RecordId session) {
  ReportBlocks blocks;
  int number = 0;
  for (const auto& step : catalogue()) {
    append(blocks, reportStep(history, step, ++number, session));
  }
  for (const auto& run : history.runs) {
    if (run.session == session && !findStep(run.step)) {
      blocks.emplace_back(Heading{2, run.step});
      blocks.emplace_back(
          Caution{say(Text::tr("This program has no step {0}; its record is kept as it is."), run.step)});
    }
  }
  if (!blocks.empty()) {
    blocks.insert(blocks.begin(), PageBreak{});  // the first page is the summary
  }
  return blocks;
}

}  // namespace

Report buildReport(const History& history, RecordId sessionId) {
  Report report;
  const Session* session = history.session(sessionId);
  report.title = Text::tr("Commissioning report");
  report.machine = machineName(history);
  report.program = "Fettle " + programVersion();
  report.date = session ? dayOf(session->date) : "";
  report.blocks.emplace_back(
      Heading{1, report.machine.empty() ? report.title : report.title + ": " + report.machine});
  if (session) {
    append(report.blocks, sessionBlocks(*session));
  }
  append(report.blocks, machineBlocks(history));
  report.blocks.emplace_back(usualCaution());
  append(report.blocks, overview(history, sessionId));
  append(report.blocks, stepBlocks(history, sessionId));
  append(report.blocks, reportEnding(history, sessionId));
  return report;
}

}  // namespace fettle
