#include "core/report/build_report.h"

#include "core/history/due.h"
#include "core/history/evaluation.h"
#include "core/history/part_groups.h"
#include "core/history/settings_in_force.h"
#include "core/history/state.h"
#include "core/history/version.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_readings.h"
#include "core/steps/catalogue.h"
#include "core/steps/machine_sheet.h"
#include "core/steps/result_label.h"

namespace fettle {
namespace {

using Blocks = std::vector<ReportBlock>;

std::string settingText(const SettingValue& value, const std::string& unit) {
  if (!value.number) {
    return value.text;
  }
  const std::string shown = displayUnit(unit);
  return formatNumber(*value.number) + (shown.empty() ? "" : " " + shown);
}

std::string leftText(const Adoption& left) {
  if (!left.value.number) {
    return left.value.text;
  }
  const std::string unit = displayUnit(left.unit);
  const int decimals = left.U && *left.U > 0 ? decimalsFor(*left.U) : -1;
  std::string text =
      decimals < 0 ? formatNumber(*left.value.number)
                   : formatFixed(*left.value.number, decimals) + " ± " + formatFixed(*left.U, decimals);
  return unit.empty() ? text : text + " " + unit;
}

void addMachine(Blocks& blocks, const History& history) {
  blocks.emplace_back(Heading{2, Text::tr("Machine")});
  ReportTable table;
  table.columns = {{Text::tr("On the sheet"), false}, {Text::tr("Value"), true}};
  for (const auto& field : machineSheetFields()) {
    const auto found = history.machine.sheet.find(field.key);
    if (found == history.machine.sheet.end() || found->is_null()) {
      continue;
    }
    std::string value = found->is_number()    ? formatNumber(found->get<double>())
                        : found->is_boolean() ? (found->get<bool>() ? Text::tr("yes") : Text::tr("no"))
                                              : found->get<std::string>();
    const std::string unit = displayUnit(field.unit);
    table.rows.push_back({{field.label + (unit.empty() ? "" : ", " + unit), value}, false});
  }
  blocks.emplace_back(std::move(table));
}

void addSession(Blocks& blocks, const Session& session) {
  blocks.emplace_back(Heading{2, Text::tr("Session")});
  ReportTable table;
  table.columns = {{Text::tr("Session"), false}, {"", false}};
  table.rows.push_back({{Text::tr("Date"), session.date}, false});
  table.rows.push_back({{Text::tr("Operator"), session.person}, false});
  table.rows.push_back({{Text::tr("Reason"), session.reason}, false});
  table.rows.push_back({{Text::tr("Filament"), session.filament}, false});
  if (session.printHours) {
    table.rows.push_back({{Text::tr("Print hours"), formatNumber(*session.printHours) + " h"}, false});
  }
  blocks.emplace_back(std::move(table));
  blocks.emplace_back(
      Paragraph{Text::tr("Mains, heat and moving parts can hurt. Guards stay on, somebody stays with a "
                         "machine that heats or moves for the first time. Work on the mains belongs to "
                         "a qualified person; local codes come before anything said here."),
                Paragraph::Tone::caution});
}

void addOverview(Blocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Where the steps stand")});
  ReportTable table;
  table.columns = {{"#", true},
                   {Text::tr("Step"), false},
                   {Text::tr("State"), false},
                   {Text::tr("Verdict"), false},
                   {Text::tr("Remark"), false}};
  int number = 0;
  for (const auto& step : catalogue()) {
    const StepStanding standing = standingOf(history, step, session);
    Verdict verdict = Verdict::none;
    for (const auto& run : history.runs) {
      const auto evaluated = history.evaluated.find(run.id);
      if (run.step == step.key && run.session <= session && evaluated != history.evaluated.end()) {
        verdict = evaluated->second.result.verdict();
      }
    }
    table.rows.push_back(
        {{std::to_string(++number), step.name, stateGlyph(standing.state) + " " + stateWord(standing.state),
          verdictWord(verdict), standing.why},
         false});
  }
  blocks.emplace_back(std::move(table));
}

ReportTable valueTable(const Step& step, const StepResult& result) {
  ReportTable table;
  table.columns = {{Text::tr("Result"), false}, {Text::tr("Value"), true}, {Text::tr("Verdict"), false}};
  for (const auto* value : arrangeResults(step, result).single) {
    const auto verdict = result.verdicts.find(value->id);
    table.rows.push_back(
        {{resultLabel(step, value->id), value->quantity ? formatQuantity(*value->quantity) : value->why,
          verdict == result.verdicts.end() ? "" : verdictWord(verdict->second)},
         false});
  }
  for (const auto& [id, text] : result.texts) {
    table.rows.push_back({{resultLabel(step, id), text, ""}, false});
  }
  return table;
}

ReportTable sideBySide(const ResultTable& results) {
  ReportTable table;
  table.columns.push_back({"", false});
  for (const auto& column : results.columns) {
    const std::string unit = displayUnit(column.unit);
    table.columns.push_back({column.label + (unit.empty() ? "" : ", " + unit), true});
  }
  for (std::size_t i = 0; i < results.rows.size(); ++i) {
    ReportTable::Row row;
    row.cells.push_back(results.owners[i]);
    for (const auto* value : results.rows[i]) {
      row.cells.push_back(value && value->quantity ? formatValue(*value->quantity) : "–");
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

ReportTable proposalTable(const StepRun& run, const StepResult& result) {
  ReportTable table;
  table.columns = {{Text::tr("Setting"), false},
                   {Text::tr("As found"), true},
                   {Text::tr("Proposed"), true},
                   {Text::tr("As left"), true}};
  for (const auto& proposal : result.settings) {
    std::string left = Text::tr("not adopted");
    for (const auto& adoption : run.adopted) {
      left = adoption.setting == proposal.id ? leftText(adoption) : left;
    }
    const Adoption proposed{proposal.id, proposal.proposed, proposal.unit, proposal.u, proposal.U, {}};
    table.rows.push_back(
        {{proposal.id, settingText(proposal.asFound, proposal.unit), leftText(proposed), left}, false});
  }
  return table;
}

void addResult(Blocks& blocks, const Step& step, const StepRun& run, const Evaluated& evaluated) {
  const StepResult& result = evaluated.result;
  if (!evaluated.problem.empty()) {
    blocks.emplace_back(Paragraph{evaluated.problem, Paragraph::Tone::caution});
    return;
  }
  if (!result.complete) {
    std::string missing;
    for (const auto& path : result.missing) {
      missing += (missing.empty() ? "" : ", ") + path;
    }
    blocks.emplace_back(
        Paragraph{say(Text::tr("Incomplete; still missing: {0}."), missing), Paragraph::Tone::dim});
  }
  if (!result.settings.empty()) {
    blocks.emplace_back(proposalTable(run, result));
  }
  if (ReportTable values = valueTable(step, result); !values.rows.empty()) {
    blocks.emplace_back(std::move(values));
  }
  for (const auto& table : arrangeResults(step, result).tables) {
    blocks.emplace_back(sideBySide(table));
  }
  for (const auto& finding : result.findings) {
    blocks.emplace_back(finding);
  }
  for (const auto& chart : result.charts) {
    if (!chart.isEmpty()) {
      blocks.emplace_back(chart);
    }
  }
}

void addRun(Blocks& blocks, const History& history, const Step& step, const StepRun& run,
            std::size_t number) {
  const std::string state =
      run.accepted() ? say(Text::tr("accepted {0}"), run.acceptedOn) : Text::tr("not accepted");
  const std::string subject = run.subject.empty() ? "" : ", " + run.subject;
  blocks.emplace_back(Heading{3, say(Text::tr("Run {0}{1}: {2}"), number, subject, state)});
  for (auto& block : reportReadings(step, run.inputs)) {
    blocks.push_back(std::move(block));
  }
  const auto evaluated = history.evaluated.find(run.id);
  if (evaluated != history.evaluated.end()) {
    addResult(blocks, step, run, evaluated->second);
    if (usesOlderValues(evaluated->second, history, run)) {
      blocks.emplace_back(
          Paragraph{Text::tr("Evaluated with older values of the sheet, the settings found or other "
                             "results."),
                    Paragraph::Tone::dim});
    }
  }
  if (!run.notes.empty()) {
    blocks.emplace_back(Paragraph{say(Text::tr("Notes: {0}"), run.notes), Paragraph::Tone::plain});
  }
}

void addSteps(Blocks& blocks, const History& history, RecordId session) {
  for (const auto& step : catalogue()) {
    auto runs = history.runsOf(step.key, session);
    if (runs.empty()) {
      // A step not touched in this session stands as it was accepted last.
      const StepRun* earlier = history.lastAccepted(step.key, "", session);
      if (!earlier) {
        continue;
      }
      runs.push_back(earlier);
    }
    blocks.emplace_back(Heading{2, step.name});
    blocks.emplace_back(Paragraph{step.purpose, Paragraph::Tone::dim});
    if (!step.caution.empty()) {
      blocks.emplace_back(Paragraph{step.caution, Paragraph::Tone::caution});
    }
    for (std::size_t i = 0; i < runs.size(); ++i) {
      addRun(blocks, history, step, *runs[i], i + 1);
    }
  }
}

void addSettings(Blocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Settings as found and as left")});
  ReportTable table;
  table.columns = {{Text::tr("Setting"), false},
                   {Text::tr("As found"), true},
                   {Text::tr("As left"), true},
                   {Text::tr("From"), false}};
  for (const auto& setting : settingsInForce(history, session)) {
    table.rows.push_back({{setting.label, settingText(setting.asFound, setting.unit),
                           setting.asLeft ? leftText(*setting.asLeft) : Text::tr("unchanged"),
                           setting.asLeft ? setting.step + ", " + setting.asLeft->date.substr(0, 10) : ""},
                          false});
  }
  blocks.emplace_back(std::move(table));
}

void addChangesAndOpenItems(Blocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Changes of parts")});
  if (history.changes.empty()) {
    blocks.emplace_back(Paragraph{Text::tr("None noted."), Paragraph::Tone::dim});
  }
  for (const auto& change : history.changes) {
    const PartGroup* group = findPartGroup(change.group);
    blocks.emplace_back(Paragraph{change.date.substr(0, 10) + ": " + (group ? group->label : change.group) +
                                      (change.note.empty() ? "" : ", " + change.note),
                                  Paragraph::Tone::plain});
  }
  blocks.emplace_back(Heading{2, Text::tr("Open")});
  bool any = false;
  for (const auto& step : catalogue()) {
    const StepStanding standing = standingOf(history, step, session);
    if (standing.state != StepState::accepted && standing.state != StepState::notAffected) {
      any = true;
      blocks.emplace_back(Paragraph{
          step.name + ": " + stateWord(standing.state) + (standing.why.empty() ? "." : ". " + standing.why),
          Paragraph::Tone::plain});
    }
  }
  if (!any) {
    blocks.emplace_back(Paragraph{Text::tr("Nothing."), Paragraph::Tone::dim});
  }
}

}  // namespace

Report buildReport(const History& history, RecordId sessionId) {
  Report report;
  report.title = Text::tr("Commissioning report");
  report.machine = history.machine.sheet.value("name", "");
  report.program = say("Fettle {0}", programVersion());
  const Session* session = history.session(sessionId);
  report.date = session ? session->date.substr(0, 10) : "";
  report.blocks.emplace_back(Heading{1, report.title + ": " + report.machine});
  if (session) {
    addSession(report.blocks, *session);
  }
  addOverview(report.blocks, history, sessionId);
  addMachine(report.blocks, history);
  addSteps(report.blocks, history, sessionId);
  addSettings(report.blocks, history, sessionId);
  addChangesAndOpenItems(report.blocks, history, sessionId);
  return report;
}

}  // namespace fettle
