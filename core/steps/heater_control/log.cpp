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
constexpr double coldest = -60, hottest = 800;  // °C: wider than any sensor of a printer

std::vector<double> columnOf(const Capture& capture, const char* key) {
  return capture.has(key) ? capture.column(key) : std::vector<double>{};
}

void refuseOutside(const std::vector<double>& values, const char* name, double low, double high) {
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!(values[i] >= low && values[i] <= high)) {
      throw Refusal{
          say(Text::tr("Log, row {0}: {1} {2} is not between {3} and {4}. A duty in percent needs "
                       "the unit % for its column."),
              i + 1, name, formatNumber(values[i]), formatNumber(low), formatNumber(high))};
    }
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
  HeaterLog log{columnOf(capture, "time_s"), columnOf(capture, "temp_C"), columnOf(capture, "duty"),
                columnOf(capture, "target_C")};
  if (log.rows() < fewestRows) {
    throw Refusal{say(Text::tr("The log has {0} rows; {1} or more are needed."), log.rows(), fewestRows)};
  }
  const auto falls = std::adjacent_find(log.time.begin(), log.time.end(), std::greater_equal<>());
  if (falls != log.time.end()) {
    throw Refusal{
        say(Text::tr("Log, row {0}: the time {1} s does not come after {2} s; rows in rising time "
                     "are needed."),
            falls - log.time.begin() + 2, formatNumber(falls[1]), formatNumber(falls[0]))};
  }
  refuseOutside(log.temperature, "temp_C", coldest, hottest);
  refuseOutside(log.duty, "duty", -1e-9, 1 + 1e-9);
  refuseOutside(log.target, "target_C", coldest, hottest);
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
    return inputs.maximum;
  }
  const std::string heater = inputs.heaterOf(context);
  return heater == "hot_end" ? context.sheet.hotEndMax
         : heater == "bed"   ? context.sheet.bedMax
                             : std::nullopt;
}

void noteOverLimit(StepResult& result, const HeaterLog& log, std::optional<double> maximum) {
  const double highest = *std::max_element(log.temperature.begin(), log.temperature.end());
  if (maximum && highest > breakOffShare * *maximum) {
    result.addFinding(
        "over-limit", Severity::fault,
        say(Text::tr("The log reaches {0} °C, above 0.95 of the {1} °C allowed: the test should have "
                     "been broken off at {2} °C. Find out why nothing did."),
            formatFixed(highest, 1), formatNumber(*maximum), formatFixed(breakOffShare * *maximum, 1)),
        "safety");
  }
}

std::string idOf(const std::string& heater, const std::string& name) {
  return heater + "." + name;
}

}  // namespace fettle
