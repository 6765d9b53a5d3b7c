#include <fmt/format.h>

#include "core/history/settings_in_force.h"
#include "core/report/build_report.h"
#include "core/steps/catalogue.h"
#include "core/steps/result_label.h"

namespace fettle {
namespace {

/// A cell after RFC 4180: quoted when it holds a comma, a quote or a line end.
std::string cell(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) {
    return text;
  }
  std::string quoted(1, '"');
  for (const char c : text) {
    quoted.append(c == '"' ? 2 : 1, c);
  }
  quoted.push_back('"');
  return quoted;
}

std::string cell(const std::optional<double>& value) {
  return value ? fmt::format("{}", *value) : std::string();
}

std::string cell(const SettingValue& value) {
  return value.number ? cell(value.number) : cell(value.text);
}

template <typename... Cells>
std::string line(const Cells&... cells) {
  std::string text;
  ((text += (text.empty() ? "" : ",") + cells), ...);
  return text + "\r\n";
}

std::string quantityLines(const Step& step, const StepRun& run, std::size_t number,
                          const StepResult& result) {
  std::string text;
  for (const auto& value : result.values) {
    const auto verdict = result.verdicts.find(value.id);
    const Quantity q = value.quantity.value_or(Quantity{});
    const auto there = [&](const std::optional<double>& part) {
      return cell(value.quantity ? part : std::nullopt);
    };
    const bool finite = q.u && q.dof < infiniteDegreesOfFreedom;
    text += line(step.key, std::to_string(number), cell(run.subject), cell(value.id),
                 cell(resultLabel(step, value.id)), there(q.value), value.unit, there(q.u),
                 there(expandedUncertainty(q)), there(finite ? std::optional(q.dof) : std::nullopt),
                 there(q.low), there(q.high),
                 verdict == result.verdicts.end() ? std::string() : verdictKey(verdict->second),
                 cell(value.why));
  }
  return text;
}

}  // namespace

std::string reportAsCsv(const History& history, RecordId session) {
  std::string csv = line(std::string("step"), std::string("run"), std::string("subject"), std::string("id"),
                         std::string("label"), std::string("value"), std::string("unit"), std::string("u"),
                         std::string("U"), std::string("dof"), std::string("low"), std::string("high"),
                         std::string("verdict"), std::string("why"));
  for (const auto& step : catalogue()) {
    const auto runs = history.runsOf(step.key, session);
    for (std::size_t i = 0; i < runs.size(); ++i) {
      const auto evaluated = history.evaluated.find(runs[i]->id);
      if (evaluated != history.evaluated.end()) {
        csv += quantityLines(step, *runs[i], i + 1, evaluated->second.result);
      }
    }
  }
  csv += "\r\n";
  csv += line(std::string("setting"), std::string("as found"), std::string("as left"), std::string("unit"),
              std::string("u"), std::string("U"), std::string("step"), std::string("date"));
  for (const auto& setting : settingsInForce(history, session)) {
    const Adoption left = setting.asLeft.value_or(Adoption{});
    csv += line(cell(setting.id), cell(setting.asFound), cell(left.value), setting.unit, cell(left.u),
                cell(left.U), setting.step, left.date);
  }
  return csv;
}

}  // namespace fettle
