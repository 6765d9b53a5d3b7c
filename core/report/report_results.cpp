#include "core/report/report_results.h"

#include <algorithm>

#include "core/history/evaluation.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_runs.h"
#include "core/report/report_words.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

using Values = std::vector<const ResultValue*>;

ReportTable valueTable(const Wording& wording, const StepContext& context, const StepResult& result,
                       const Values& values) {
  ReportTable table;
  table.columns = {{Text::tr("Result"), false},
                   {Text::tr("Value"), true},
                   {Text::tr("Limit"), true},
                   {Text::tr("Verdict"), false}};
  for (const auto* value : values) {
    const Judged* judged = result.judgement(value->id);
    const Tolerance limit = judged ? toleranceOf(wording.step(), context, value->id) : Tolerance{};
    table.rows.push_back(
        {{wording.label(value->id), value->quantity ? formatQuantity(*value->quantity) : "–",
          toleranceText(limit, value->unit), judged ? verdictText(judged->verdict) : std::string()},
         false});
  }
  dropEmptyColumns(table);
  return table;
}

ReportTable sideBySide(const StepResult& result, const ResultTable& results) {
  ReportTable table;
  table.columns.push_back({"", false});
  for (const auto& column : results.columns) {
    table.columns.push_back({headOf(column.label, column.unit), true});
  }
  for (std::size_t i = 0; i < results.rows.size(); ++i) {
    ReportTable::Row row{{results.owners[i]}, false};
    for (const auto* value : results.rows[i]) {
      std::string text = value && value->quantity ? formatValue(*value->quantity) : "–";
      const Judged* judged = value ? result.judgement(value->id) : nullptr;
      if (judged && judged->verdict != Verdict::none) {
        text += " " + verdictText(judged->verdict);
      }
      row.cells.push_back(std::move(text));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

/// Why values are not given: each reason once, with all it holds for.
void addReasons(ReportBlocks& blocks, const Wording& wording, const Values& values) {
  std::vector<std::pair<std::string, std::string>> labelsByReason;
  for (const auto* value : values) {
    if (!value || value->quantity || value->why.empty()) {
      continue;
    }
    const auto known = std::find_if(labelsByReason.begin(), labelsByReason.end(),
                                    [&](const auto& reason) { return reason.first == value->why; });
    if (known == labelsByReason.end()) {
      labelsByReason.emplace_back(value->why, wording.label(value->id));
    } else {
      known->second += "; " + wording.label(value->id);
    }
  }
  for (const auto& [reason, labels] : labelsByReason) {
    blocks.emplace_back(Paragraph{say(Text::tr("{0}: not given ({1})."), labels, reason), true});
  }
}

void addNotes(ReportBlocks& blocks, const ResultTable& table) {
  for (const auto& notes : table.notes) {
    KeyValues facts;
    for (std::size_t i = 0; i < notes.texts.size(); ++i) {
      if (!notes.texts[i].empty()) {
        facts.pairs.emplace_back(table.owners[i] + ": " + notes.label, notes.texts[i]);
      }
    }
    blocks.emplace_back(std::move(facts));
  }
}

void addValues(ReportBlocks& blocks, const Wording& wording, const Evaluated& evaluated) {
  const StepResult& result = evaluated.result;
  if (result.values.empty() && result.texts.empty()) {
    return;
  }
  blocks.emplace_back(Heading{4, Text::tr("Results")});
  const StepContext context = contextFrom(evaluated.with).value_or(StepContext{});
  const ArrangedResults arranged = arrangeResults(wording, result);
  if (!arranged.single.empty()) {
    blocks.emplace_back(valueTable(wording, context, result, arranged.single));
    addReasons(blocks, wording, arranged.single);
  }
  if (!arranged.texts.empty()) {
    blocks.emplace_back(KeyValues{arranged.texts});
  }
  for (const auto& table : arranged.tables) {
    blocks.emplace_back(sideBySide(result, table));
    Values values;
    for (const auto& row : table.rows) {
      values.insert(values.end(), row.begin(), row.end());
    }
    addReasons(blocks, wording, values);
    addNotes(blocks, table);
  }
}

/// A proposal as precisely as it is known: with U, as the interval of its result, else four digits.
std::string proposedText(const SettingProposal& proposal, const StepResult& result) {
  const Quantity* same = result.quantity(proposal.id);
  if (!proposal.proposed.number || (proposal.U && *proposal.U > 0)) {
    return settingText(proposal.proposed, proposal.U, proposal.unit);
  }
  return same && same->value == *proposal.proposed.number
             ? formatQuantity(*same)
             : withUnit(formatPlain(*proposal.proposed.number), proposal.unit);
}

void addProposals(ReportBlocks& blocks, const Wording& wording, const StepRun& run,
                  const StepResult& result) {
  if (result.settings.empty()) {
    return;
  }
  ReportTable table;
  table.columns = {{Text::tr("Setting"), false},
                   {Text::tr("As found"), true},
                   {Text::tr("Proposed"), true},
                   {Text::tr("As left"), true}};
  for (const auto& proposal : result.settings) {
    const Adoption* adopted = adoptionOf(run, proposal.id);
    table.rows.push_back(
        {{wording.label(proposal.id),
          proposal.asFound.blank() ? Text::tr("not known")
                                   : settingText(proposal.asFound, std::nullopt, proposal.unit),
          wording.text(proposal.id, proposedText(proposal, result)),
          adopted ? wording.text(proposal.id, settingText(adopted->value, adopted->U, adopted->unit))
                  : Text::tr("not adopted")},
         false});
  }
  blocks.emplace_back(Heading{4, Text::tr("Settings, as found and as left")});
  blocks.emplace_back(std::move(table));
}

void addFindings(ReportBlocks& blocks, const StepResult& result) {
  if (result.findings.empty()) {
    return;
  }
  blocks.emplace_back(Heading{4, Text::tr("Findings")});
  std::vector<Finding> sorted = result.findings;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  for (auto& finding : sorted) {
    if (const Step* see = findStep(finding.see)) {
      finding.text += " " + say(Text::tr("See {0}."), see->name);
    }
    blocks.emplace_back(std::move(finding));
  }
}

}  // namespace

ReportBlocks reportResults(const Step& step, const StepRun& run, const Evaluated& evaluated) {
  const StepResult& result = evaluated.result;
  if (!evaluated.problem.empty()) {
    return {Caution{say(Text::tr("Not evaluated. {0}"), evaluated.problem)}};
  }
  const Wording wording(step, &result, subjectName(step, run.inputs, run.subject));
  ReportBlocks blocks;
  if (!result.complete) {
    blocks.emplace_back(
        Caution{say(Text::tr("Incomplete; still missing: {0}."), wording.paths(result.missing))});
  }
  addValues(blocks, wording, evaluated);
  addProposals(blocks, wording, run, result);
  addFindings(blocks, result);
  for (const auto& chart : result.charts) {
    if (!chart.isEmpty()) {
      blocks.emplace_back(chart);
    }
  }
  return blocks;
}

}  // namespace fettle
