#include "core/steps/heater_control/log.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr std::size_t fewestRows = 10;
constexpr double dutyThreshold = 0.02;
constexpr double dutySlack = 1e-9;              // of a duty that was rounded
constexpr double coldest = -60, hottest = 800;  // °C: wider than any sensor of a printer

std::vector<double> columnOf(const Capture& capture, const char* key) {
  return capture.has(key) ? capture.column(key) : std::vector<double>{};
}

/// The first row that is not between the limits, as a sentence; empty when all are.
std::string firstOutside(const std::vector<double>& values, const char* name, double low, double high) {
  const auto wrong = std::find_if(values.begin(), values.end(),
                                  [&](double value) { return !(value >= low && value <= high); });
  return wrong == values.end() ? std::string()
                               : say(Text::tr("Log, row {0}: {1} {2} is not between {3} and {4}."),
                                     wrong - values.begin() + 1, name, formatNumber(*wrong),
                                     formatNumber(low), formatNumber(high));
}

/// Keeps a column only where nothing in it is refused.
void keepUnlessRefused(std::vector<double>& column, const std::string& refused) {
  if (!refused.empty()) {
    column.clear();
  }
}

}  // namespace

double HeaterLog::interval() const {
  std::vector<double> steps;
  for (std::size_t i = 1; i < time.size(); ++i) {
    steps.push_back(time[i] - time[i - 1]);
  }
  return maths::median(steps);
}

HeaterLog heaterLogOf(const Capture& capture) {
  HeaterLog log;
  log.time = columnOf(capture, "time_s");
  log.temperature = columnOf(capture, "temp_C");
  log.duty = columnOf(capture, "duty");
  log.target = columnOf(capture, "target_C");
  if (log.rows() < fewestRows) {
    throw Refusal{say(Text::tr("The log has {0} rows; {1} or more are needed."), log.rows(), fewestRows),
                  "log"};
  }
  const auto falls = std::adjacent_find(log.time.begin(), log.time.end(), std::greater_equal<>());
  if (falls != log.time.end()) {
    throw Refusal{
        say(Text::tr("Log, row {0}: the time {1} s does not come after {2} s; rows in rising time "
                     "are needed."),
            falls - log.time.begin() + 2, formatNumber(falls[1]), formatNumber(falls[0])),
        "log"};
  }
  if (const auto refused = firstOutside(log.temperature, "temp_C", coldest, hottest); !refused.empty()) {
    throw Refusal{refused, "log"};
  }
  log.dutyRefused = firstOutside(log.duty, "duty", -dutySlack, 1 + dutySlack);
  if (!log.dutyRefused.empty()) {
    log.dutyRefused += " " + Text::tr("A duty in percent needs the unit % for its column.");
  }
  log.targetRefused = firstOutside(log.target, "target_C", coldest, hottest);
  keepUnlessRefused(log.duty, log.dutyRefused);
  keepUnlessRefused(log.target, log.targetRefused);
  const double zero = log.time.front();
  for (double& time : log.time) {
    time -= zero;
  }
  return log;
}

std::vector<std::size_t> dutyChanges(const std::vector<double>& duty) {
  std::vector<std::size_t> changes;
  double level = duty.empty() ? 0 : duty.front();
  for (std::size_t i = 1; i < duty.size(); ++i) {
    if (std::abs(duty[i] - level) > dutyThreshold) {
      changes.push_back(i);
      level = duty[i];
    }
  }
  return changes;
}

std::optional<double> allowedMaximum(const HeaterControlInputs& inputs, const StepContext& context) {
  if (inputs.maximum) {
    return std::isnan(*inputs.maximum) ? std::nullopt : inputs.maximum;  // NaN: was refused
  }
  const std::string heater = inputs.heaterOf(context);
  return heater == "hot_end" ? context.sheet.hotEndMax
         : heater == "bed"   ? context.sheet.bedMax
                             : std::nullopt;
}

void noteLog(StepResult& result, const HeaterLog& log, std::optional<double> maximum) {
  for (const std::string& refused : {log.dutyRefused, log.targetRefused}) {
    if (!refused.empty()) {
      result.refuse({refused, "log"});
    }
  }
  const double highest = *std::max_element(log.temperature.begin(), log.temperature.end());
  if (!maximum) {
    result.addFinding(
        "limit-not-checked", Severity::note,
        say(Text::tr("The highest temperature allowed is not known, so the {0} °C of the log were not "
                     "checked against it. Enter it here or on the machine sheet."),
            formatFixed(highest, 1)),
        {}, "max_C");
  } else if (highest > breakOffShare * *maximum) {
    result.addFinding(
        "over-limit", Severity::fault,
        say(Text::tr("The log reaches {0} °C, above 0.95 of the {1} °C allowed: the test should have "
                     "been broken off at {2} °C. Find out why nothing did."),
            formatFixed(highest, 1), formatNumber(*maximum), formatFixed(breakOffShare * *maximum, 1)),
        "safety", "log");
  }
}

}  // namespace fettle
