#include <fmt/format.h>

#include "core/history/settings_in_force.h"
#include "core/history/state.h"
#include "core/report/build_report.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

using Cells = std::vector<std::string>;

/// A line after RFC 4180: a cell is quoted when it holds a comma, a quote or a line end.
std::string line(const Cells& cells) {
  std::string text;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    text += i == 0 ? "" : ",";
    if (cells[i].find_first_of(",\"\r\n") == std::string::npos) {
      text += cells[i];
      continue;
    }
    text += '"';
    for (const char c : cells[i]) {
      text += c == '"' ? "\"\"" : std::string(1, c);
    }
    text += '"';
  }
  return text + "\r\n";
}

std::string number(const std::optional<double>& value) {
  return value ? fmt::format("{}", *value) : std::string();
}

std::string settingCell(const SettingValue& value) {
  return value.number ? number(value.number) : value.text;
}

Cells quantityCells(const Quantity& quantity) {
  const bool finite = quantity.u && quantity.dof < infiniteDegreesOfFreedom;
  return {number(quantity.value),
          quantity.unit,
          number(quantity.u),
          number(expandedUncertainty(quantity)),
          finite ? number(quantity.dof) : "",
          number(quantity.low),
          number(quantity.high)};
}

/// The lines of a run; `where` are the cells that name it.
std::string resultLines(const Cells& where, const Wording& wording, const StepResult& result) {
  std::string lines;
  const auto add = [&](const std::string& id, const Cells& values, const std::string& verdict,
                       const std::string& why) {
    Cells cells = where;
    cells.insert(cells.end(), {id, wording.label(id)});
    cells.insert(cells.end(), values.begin(), values.end());
    cells.insert(cells.end(), {verdict, why});
    lines += line(cells);
  };
  for (const auto& value : result.values) {
    const Judged* judged = result.judgement(value.id);
    add(value.id,
        value.quantity ? quantityCells(*value.quantity) : Cells{"", value.unit, "", "", "", "", ""},
        judged ? verdictKey(judged->verdict) : "", value.why);
  }
  for (const auto& text : result.texts) {
    add(text.id, {text.text, "", "", "", "", "", ""}, "", "");
  }
  return lines;
}

/// What a run says besides its values: why it was refused, what it lacks, its findings.
std::string findingLines(const Cells& where, const Evaluated& evaluated) {
  std::string lines;
  const auto add = [&](const std::string& code, const std::string& severity, const std::string& sentence,
                       const std::string& see) {
    Cells cells = where;
    cells.insert(cells.end(), {code, severity, sentence, see});
    lines += line(cells);
  };
  if (!evaluated.problem.empty()) {
    add("refused", severityKey(Severity::fault), evaluated.problem, "");
  }
  for (const auto& path : evaluated.result.missing) {
    add("missing", severityKey(Severity::note), path, "");
  }
  for (const auto& finding : evaluated.result.findings) {
    add(finding.code, severityKey(finding.severity), finding.text, finding.see);
  }
  return lines;
}

std::string findingTable(const History& history, RecordId session, const std::string& date) {
  std::string csv = line({"session", "step", "run", "subject", "finding", "severity", "text", "see"});
  for (const auto& step : catalogue()) {
    if (const StepStanding standing = standingOf(history, step, session);
        standing.state == StepState::blocked) {
      csv += line({date, step.key, "", "", "blocked", severityKey(Severity::caution), standing.why, ""});
    }
    std::size_t count = 0;
    for (const auto* run : history.runsOf(step.key, session)) {
      const std::string runNumber = std::to_string(++count);
      const auto evaluated = history.evaluated.find(run->id);
      if (evaluated != history.evaluated.end() && !run->inputs.empty()) {
        csv += findingLines({date, step.key, runNumber, run->subject}, evaluated->second);
      }
    }
  }
  return csv;
}

}  // namespace

std::string reportAsCsv(const History& history, RecordId sessionId) {
  const Session* session = history.session(sessionId);
  const std::string date = session ? session->date : "";
  std::string csv = line({"session", "step", "run", "subject", "id", "label", "value", "unit", "u", "U",
                          "dof", "low", "high", "verdict", "why"});
  for (const auto& step : catalogue()) {
    std::size_t count = 0;
    for (const auto* run : history.runsOf(step.key, sessionId)) {
      const std::string runNumber = std::to_string(++count);
      const auto evaluated = history.evaluated.find(run->id);
      if (evaluated != history.evaluated.end()) {
        csv += resultLines({date, step.key, runNumber, run->subject},
                           Wording(step, &evaluated->second.result), evaluated->second.result);
      }
    }
  }
  csv += "\r\n";
  csv +=
      line({"setting", "label", "as found", "found on", "as left", "unit", "u", "U", "step", "adopted on"});
  for (const auto& setting : settingsInForce(history, sessionId)) {
    const Adoption left = setting.asLeft.value_or(Adoption{});
    csv += line({setting.id, setting.label, settingCell(setting.asFound), setting.asFoundOn,
                 settingCell(left.value), setting.unit, number(left.u), number(left.U), setting.step,
                 left.date});
  }
  csv += "\r\n";
  csv += findingTable(history, sessionId, date);
  return csv;
}

}  // namespace fettle
