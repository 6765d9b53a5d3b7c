#include "core/steps/heater_control/relay_test.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

constexpr std::size_t cyclesUsed = 4;
constexpr double cyclesMayDiffer = 0.10;
constexpr double shortestOn = 0.35, longestOn = 0.65;
constexpr double meanMayDiffer = 1;  // °C

/// The two duties of the relay, and the rows in which the heater is switched on.
struct Relay {
  double low = 0, high = 0;
  std::vector<std::size_t> starts;
};

/// Duties from the second half of the log: heating up before it may have used others.
Relay relayOfDuty(const std::vector<double>& duty) {
  const auto half = duty.begin() + static_cast<std::ptrdiff_t>(duty.size() / 2);
  const auto [least, most] = std::minmax_element(half, duty.end());
  const double middle = 0.5 * (*least + *most);
  Relay relay;
  std::vector<double> low, high;
  for (auto at = half; at != duty.end(); ++at) {
    (*at > middle ? high : low).push_back(*at);
  }
  if (high.empty()) {
    throw Refusal{Text::tr("The duty does not switch in the second half of the log; a relay test switches "
                           "between two duties."),
                  "log"};
  }
  relay.low = maths::median(low);
  relay.high = maths::median(high);
  for (std::size_t i = 1; i < duty.size(); ++i) {
    if (duty[i - 1] <= middle && duty[i] > middle) {
      relay.starts.push_back(i);
    }
  }
  return relay;
}

/// Without duty: rows in which the temperature falls through the target, once it was clearly above.
Relay relayOfTemperature(const HeaterLog& log, double target, double low, double high) {
  const auto half = log.temperature.begin() + static_cast<std::ptrdiff_t>(log.rows() / 2);
  const double above = 0.5 * (*std::max_element(half, log.temperature.end()) - target);
  Relay relay{low, high, {}};
  bool armed = false;
  for (std::size_t i = 0; i < log.rows(); ++i) {
    if (log.temperature[i] > target + above) {
      armed = true;
    } else if (armed && log.temperature[i] < target) {
      relay.starts.push_back(i);
      armed = false;
    }
  }
  return relay;
}

std::optional<double> targetOf(const HeaterControlInputs& inputs, const HeaterLog& log) {
  return log.target.empty() ? inputs.target : std::optional(log.target.back());
}

/// Whether all is typed that the log does not say.
bool isKnown(StepResult& result, const HeaterControlInputs& inputs, const std::string& heater,
             const HeaterLog& log) {
  const bool begun = inputs.dutyLow || inputs.dutyHigh;
  if (!log.dutyRefused.empty() && !begun) {
    withholdRefused(result, relayTestResults(heater), log.dutyRefused, "log");
    return false;
  }
  std::vector<NeededEntry> entries{{"hysteresis_C", inputs.hysteresis}};
  if (log.duty.empty()) {
    entries.push_back({"duty_low", inputs.dutyLow});
    entries.push_back({"duty_high", inputs.dutyHigh});
    entries.push_back({"target_C", targetOf(inputs, log)});
  }
  return areEntered(result, relayTestResults(heater), entries);
}

Relay relayOf(const HeaterControlInputs& inputs, const HeaterLog& log) {
  return log.duty.empty()
             ? relayOfTemperature(log, *targetOf(inputs, log), *inputs.dutyLow, *inputs.dutyHigh)
             : relayOfDuty(log.duty);
}

struct Cycles {
  std::vector<double> periods, amplitudes, lowest, highest;
};

Cycles cyclesOf(const HeaterLog& log, const std::vector<std::size_t>& starts) {
  Cycles cycles;
  for (std::size_t k = 0; k + 1 < starts.size(); ++k) {
    const auto from = log.temperature.begin() + static_cast<std::ptrdiff_t>(starts[k]);
    const auto to = log.temperature.begin() + static_cast<std::ptrdiff_t>(starts[k + 1]);
    const auto [low, high] = std::minmax_element(from, to);
    cycles.periods.push_back(log.time[starts[k + 1]] - log.time[starts[k]]);
    cycles.amplitudes.push_back((*high - *low) / 2);
    cycles.lowest.push_back(*low);
    cycles.highest.push_back(*high);
  }
  return cycles;
}

void refuseUneven(const std::vector<double>& values, const std::string& what) {
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  if (*most - *least > cyclesMayDiffer * maths::mean(values)) {
    throw Refusal{
        say(Text::tr("The {0} of the last four cycles differs by more than 10 %, from {1} to {2}: "
                     "let the relay run until the swing is steady."),
            what, formatPlain(*least), formatPlain(*most)),
        "log"};
  }
}

/// Mean over time of values that hold until the next row.
double timeMean(const std::vector<double>& time, const std::vector<double>& values, std::size_t from,
                std::size_t to) {
  double sum = 0;
  for (std::size_t i = from; i < to; ++i) {
    sum += values[i] * (time[i + 1] - time[i]);
  }
  return sum / (time[to] - time[from]);
}

void noteAsymmetry(StepResult& result, const HeaterLog& log, const Relay& relay,
                   const std::optional<double>& target) {
  const std::size_t from = relay.starts.front();
  const std::size_t to = relay.starts.back();
  std::string reasons;
  if (!log.duty.empty()) {
    const double mean = timeMean(log.time, log.duty, from, to);
    const double on = (mean - relay.low) / (relay.high - relay.low);
    if (on < shortestOn || on > longestOn) {
      reasons =
          say(Text::tr("The heater is on for {0} of the time, not for 0.35 to 0.65."), formatFixed(on, 2));
    }
  }
  const double temperature = timeMean(log.time, log.temperature, from, to);
  if (target && std::abs(temperature - *target) > meanMayDiffer) {
    reasons += (reasons.empty() ? "" : " ") +
               say(Text::tr("The mean of {0} °C is more than 1 °C from the target of {1} °C."),
                   formatFixed(temperature, 1), formatNumber(*target));
  }
  if (!reasons.empty()) {
    result.addFinding(
        "relay-asymmetric", Severity::caution,
        reasons + " " +
            Text::tr("The formula supposes an even swing. Choose the two duties evenly about the "
                     "one that holds the target."),
        {}, "log");
    result.next.push_back({"log", 1, Text::tr("Log one relay test again, with an even swing.")});
  }
}

HeaterModel pointOf(const Relay& relay, const Cycles& cycles, double hysteresis, double interval) {
  const double swing = maths::mean(cycles.amplitudes);
  const double halfStep = 0.5 * (relay.high - relay.low);
  const auto gain = maths::ultimateGainFromRelay(halfStep, swing, hysteresis);
  if (!gain) {
    throw Refusal{say(Text::tr("The swing of ±{0} °C must be wider than the half hysteresis of {1} °C, and "
                               "the high duty of {2} above the low one of {3}."),
                      formatPlain(swing), formatNumber(hysteresis), formatNumber(relay.high),
                      formatNumber(relay.low)),
                  "hysteresis_C"};
  }
  const Quantity amplitude =
      meanOfReadingsWithoutCommonError(cycles.amplitudes, Instrument{"", 0, 0, 0, "C"}, "C");
  const Quantity period =
      meanOfReadingsWithoutCommonError(cycles.periods, Instrument{"", interval, 0, 0, "s"}, "s");
  // dKu/da = −Ku·a/(a² − ε²)
  const double slope = *gain * swing / (swing * swing - hysteresis * hysteresis);
  HeaterModel model;
  model.point = maths::UltimatePoint{*gain, period.value};
  model.covariance =
      Eigen::Vector2d(std::pow(slope * *amplitude.u, 2), std::pow(*period.u, 2)).asDiagonal();
  model.dof = static_cast<double>(cyclesUsed - 1);
  return model;
}

std::optional<maths::DeadTimeModel> plantOf(const HeaterLog& log, const std::vector<std::size_t>& starts,
                                            const maths::UltimatePoint& point, double room) {
  if (log.duty.empty() || std::isnan(room)) {
    return std::nullopt;
  }
  const double duty = timeMean(log.time, log.duty, starts.front(), starts.back());
  const double rise = timeMean(log.time, log.temperature, starts.front(), starts.back()) - room;
  const auto plant = maths::modelWithUltimatePoint(duty > 0 ? rise / duty : 0, point);
  return plant ? std::optional(*plant) : std::nullopt;
}

Quantity withDeviation(double value, double variance, double dof, const char* unit) {
  Quantity quantity = plainQuantity(value, unit);
  quantity.u = std::sqrt(variance);
  quantity.dof = dof;
  return quantity;
}

}  // namespace

std::vector<ResultId> relayTestResults(const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  return {key.ultimateGain(heater), key.ultimatePeriod(heater)};
}

std::optional<RelaySwing> giveRelayTest(StepResult& result, const HeaterControlInputs& inputs,
                                        const std::string& heater, const HeaterLog& log) {
  if (!isKnown(result, inputs, heater, log)) {
    return std::nullopt;
  }
  Relay relay = relayOf(inputs, log);
  if (relay.starts.size() < cyclesUsed + 1) {
    throw Refusal{say(Text::tr("The heater is switched on {0} times in this log; four whole cycles, five "
                               "times, are needed."),
                      relay.starts.size()),
                  "log"};
  }
  relay.starts.erase(relay.starts.begin(), relay.starts.end() - (cyclesUsed + 1));
  const Cycles cycles = cyclesOf(log, relay.starts);
  refuseUneven(cycles.periods, Text::tr("period"));
  refuseUneven(cycles.amplitudes, Text::tr("amplitude"));
  RelaySwing swing;
  swing.model = pointOf(relay, cycles, *inputs.hysteresis, log.interval());
  swing.target = targetOf(inputs, log);
  if (swing.target && std::isnan(*swing.target)) {  // was refused
    swing.target.reset();
  }
  swing.low = maths::mean(cycles.lowest);
  swing.high = maths::mean(cycles.highest);
  for (const std::size_t start : relay.starts) {
    swing.starts.push_back(log.time[start]);
  }
  const HeaterModel& model = swing.model;
  swing.plant = plantOf(log, relay.starts, *model.point, inputs.room);
  const auto& key = keysOf<HeaterControlResults>();
  result.give(key.ultimateGain(heater),
              withDeviation(model.point->gain, model.covariance(0, 0), model.dof, "1/C"));
  result.give(key.ultimatePeriod(heater),
              withDeviation(model.point->period, model.covariance(1, 1), model.dof, "s"));
  noteAsymmetry(result, log, relay, swing.target);
  return swing;
}

std::optional<HeaterModel> giveTypedPoint(StepResult& result, const HeaterControlInputs& inputs,
                                          const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  const std::pair<ResultId, NeededEntry> typed[] = {
      {key.ultimateGain(heater), {"Ku", inputs.ultimateGain}},
      {key.ultimatePeriod(heater), {"Pu", inputs.ultimatePeriod}}};
  bool all = true;
  for (const auto& [id, entry] : typed) {
    if (areEntered(result, {id}, {entry})) {
      result.give(id, *entry.value);
    } else {
      all = false;
    }
  }
  if (!all) {
    return std::nullopt;
  }
  HeaterModel model;
  model.point = maths::UltimatePoint{*inputs.ultimateGain, *inputs.ultimatePeriod};
  return model;
}

}  // namespace fettle
