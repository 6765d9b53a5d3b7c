#include "core/report/report_ending.h"

#include <algorithm>

#include "core/history/part_groups.h"
#include "core/history/settings_in_force.h"
#include "core/history/state.h"
#include "core/measure/text.h"
#include "core/report/report_runs.h"
#include "core/report/report_words.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

/// When and where a setting as found was read.
std::string originOf(const History& history, const SettingInForce& setting) {
  std::string origin = dayOf(setting.asFoundOn);
  const auto delivered = history.machine.asFound.find(setting.id);
  if (delivered != history.machine.asFound.end() && delivered->second.date == setting.asFoundOn &&
      !delivered->second.source.empty()) {
    origin += (origin.empty() ? "" : ", ") + delivered->second.source;
  }
  return origin;
}

void addSettings(ReportBlocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Settings as found and as left")});
  ReportTable table;
  table.columns = {{Text::tr("Setting"), false},
                   {Text::tr("As found"), true},
                   {Text::tr("Found"), false},
                   {Text::tr("As left"), true},
                   {Text::tr("By"), false}};
  for (const auto& setting : settingsInForce(history, session)) {
    const auto& left = setting.asLeft;
    table.rows.push_back(
        {{setting.label,
          setting.asFound.blank() ? Text::tr("not known")
                                  : settingText(setting.asFound, std::nullopt, setting.unit),
          originOf(history, setting),
          left ? settingText(left->value, left->U, setting.unit) : Text::tr("as found"),
          left ? stepName(setting.step) + ", " + minuteOf(left->date) : std::string()},
         false});
  }
  if (table.rows.empty()) {
    blocks.emplace_back(Paragraph{Text::tr("No setting is known as found, and none was adopted."), true});
  } else {
    blocks.emplace_back(std::move(table));
  }
}

void addChanges(ReportBlocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Changes of parts")});
  ReportTable table;
  table.columns = {{Text::tr("Date"), false},
                   {Text::tr("Part"), false},
                   {Text::tr("Note"), false},
                   {Text::tr("Makes due"), false}};
  const std::string end = history.endOf(session);
  for (const auto& change : history.changes) {
    if (!end.empty() && change.date >= end) {
      continue;
    }
    const PartGroup* group = findPartGroup(change.group);
    std::string due;
    for (const auto& key : group ? group->due : std::vector<std::string>{}) {
      if (const Step* step = findStep(key)) {
        due += (due.empty() ? "" : ", ") + step->name;
      }
    }
    table.rows.push_back(
        {{dayOf(change.date), group ? group->label : change.group, change.note, due}, false});
  }
  if (table.rows.empty()) {
    blocks.emplace_back(Paragraph{Text::tr("None noted."), true});
  } else {
    blocks.emplace_back(std::move(table));
  }
}

/// What is open with one step; the first line says how it stands.
void addOpenPoints(ReportTable& table, const History& history, const Step& step, RecordId session) {
  const StepStanding standing = standingOf(history, step, session);
  if (standing.state != StepState::accepted && standing.state != StepState::notAffected) {
    const bool saysItself = standing.state == StepState::due && !standing.why.empty();
    std::string text = stateGlyph(standing.state) + " " + (saysItself ? "" : stateWord(standing.state));
    text += (saysItself || standing.why.empty() ? "" : ": ") + standing.why;
    table.rows.push_back({{step.name, text}, false});
  }
  for (const auto* run : decidingRuns(history, step, session)) {
    const StepResult* result = resultOf(history, *run);
    for (auto& point : result ? openPoints(step, *run, *result) : std::vector<std::string>{}) {
      const std::string subject = subjectName(step, run->inputs, run->subject);
      table.rows.push_back(
          {{step.name + (subject.empty() ? "" : ", " + subject), std::move(point)}, false});
    }
  }
}

void addOpen(ReportBlocks& blocks, const History& history, RecordId session) {
  blocks.emplace_back(Heading{2, Text::tr("Open")});
  ReportTable table;
  table.columns = {{Text::tr("Step"), false}, {Text::tr("What is open"), false}};
  for (const auto& step : catalogue()) {
    addOpenPoints(table, history, step, session);
  }
  if (table.rows.empty()) {
    blocks.emplace_back(Paragraph{Text::tr("Nothing."), true});
  } else {
    blocks.emplace_back(std::move(table));
  }
}

}  // namespace

ReportBlocks reportEnding(const History& history, RecordId session) {
  ReportBlocks blocks;
  addSettings(blocks, history, session);
  addChanges(blocks, history, session);
  addOpen(blocks, history, session);
  return blocks;
}

}  // namespace fettle
