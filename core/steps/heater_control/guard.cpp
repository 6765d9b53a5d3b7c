#include "core/steps/heater_control/guard.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

constexpr double fullDuty = 0.95;

double temperatureAt(const HeaterLog& log, std::size_t row, double time) {
  const double share = (time - log.time[row - 1]) / (log.time[row] - log.time[row - 1]);
  return log.temperature[row - 1] + share * (log.temperature[row] - log.temperature[row - 1]);
}

/// A duty holds until the next row: from row i full duty lasts to the first row below it.
std::optional<double> slowestRise(const HeaterLog& log, double window) {
  std::optional<double> slowest;
  std::size_t end = 0;   // first row at or after the window's end
  std::size_t stop = 0;  // first row at or after i that is not at full duty
  for (std::size_t i = 0; i < log.rows(); ++i) {
    stop = std::max(stop, i);
    while (stop < log.rows() && log.duty[stop] >= fullDuty) {
      ++stop;
    }
    end = std::max(end, i + 1);
    while (end < log.rows() && log.time[end] < log.time[i] + window) {
      ++end;
    }
    if (stop > i && end < log.rows() && end <= stop) {
      const double rise = temperatureAt(log, end, log.time[i] + window) - log.temperature[i];
      slowest = std::min(slowest.value_or(rise), rise);
    }
  }
  return slowest;
}

void withhold(StepResult& result, const std::string& heater, const std::string& why) {
  for (const ResultId& id : guardResults(heater)) {
    result.withhold(id, why);
  }
}

void noteNoRise(StepResult& result, double window) {
  result.addFinding(
      "no-rise-at-full-duty", Severity::fault,
      say(Text::tr("At full duty the temperature does not rise within {0} s. Look at heater, sensor "
                   "and wiring before anything else."),
          formatNumber(window)),
      "safety", "log");
}

}  // namespace

std::vector<ResultId> guardResults(const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  return {key.slowestRise(heater), key.guardRise(heater)};
}

void giveGuard(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
               const std::optional<HeaterLog>& log) {
  const double window = inputs.riseWindow.value_or(riseWindowOf(heater));
  if (!log) {
    withhold(result, heater, Text::tr("there is no log"));
    return;
  }
  if (!log->dutyRefused.empty()) {
    withholdRefused(result, guardResults(heater), log->dutyRefused, "log");
    return;
  }
  if (log->duty.empty()) {
    withhold(result, heater, Text::tr("the log has no duty"));
    return;
  }
  if (!areEntered(result, guardResults(heater), {{"rise_window_s", window}})) {
    return;
  }
  const auto slowest = slowestRise(*log, window);
  if (!slowest) {
    withhold(result, heater,
             say(Text::tr("the log has no {0} s at a duty of 0.95 or more"), formatNumber(window)));
    return;
  }
  const auto& key = keysOf<HeaterControlResults>();
  result.give(key.slowestRise(heater), *slowest);
  if (*slowest <= 0) {
    result.withhold(key.guardRise(heater), Text::tr("at full duty there is a stretch without any rise"));
    noteNoRise(result, window);
    return;
  }
  result.give(key.guardRise(heater), *slowest / 2);
}

}  // namespace fettle
