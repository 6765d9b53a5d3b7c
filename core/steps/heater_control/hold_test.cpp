#include "core/steps/heater_control/hold_test.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/maths/descriptive.h"
#include "core/maths/straight_line.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

constexpr double meanWindow = 5;  // s
constexpr double patience = 5;    // times what is to be held; common practice, no source
constexpr double clockSlack = 1e-6;
constexpr double nearTarget = 5;  // °C, from where on the approach can be seen beside the band

std::vector<ResultId> keysOfSettled(const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  return {key.settling(heater),   key.meanError(heater), key.scatter(heater),
          key.peakToPeak(heater), key.slope(heater),     key.greatestFall(heater)};
}

/// Rows that lie under one target.
struct Stretch {
  std::span<const double> time, temperature;
  double target;
};

Stretch stretchOf(const HeaterLog& log, std::size_t from, std::size_t to, double target) {
  return {std::span(log.time).subspan(from, to - from), std::span(log.temperature).subspan(from, to - from),
          target};
}

/// The longest stretch of one target above zero.
Stretch longestStretch(StepResult& result, const HeaterLog& log) {
  std::size_t bestFrom = 0;
  std::size_t bestTo = 0;
  double longest = -1;
  int stretches = 0;
  for (std::size_t from = 0; from < log.rows();) {
    std::size_t to = from;
    while (to < log.rows() && log.target[to] == log.target[from]) {
      ++to;
    }
    if (log.target[from] > 0) {
      ++stretches;
      const double lasts = log.time[to - 1] - log.time[from];
      if (lasts > longest) {
        longest = lasts;
        bestFrom = from;
        bestTo = to;
      }
    }
    from = to;
  }
  if (longest < 0) {
    throw Refusal{Text::tr("No row of the log has a target above 0 °C; a heater that is on is needed."),
                  "log"};
  }
  if (stretches > 1) {
    result.addFinding(
        "more-targets", Severity::note,
        say(Text::tr("The log has {0} stretches of different targets; the longest counts, {1} °C from "
                     "{2} s on."),
            stretches, formatNumber(log.target[bestFrom]), formatFixed(log.time[bestFrom], 1)),
        {}, "log");
  }
  return stretchOf(log, bestFrom, bestTo, log.target[bestFrom]);
}

/// Means over 5 s, one for each row that has so much before it since row `from`.
std::vector<double> runningMeans(const Stretch& rows, std::size_t from) {
  std::vector<double> means;
  std::size_t first = from;
  double sum = 0;
  for (std::size_t i = from; i < rows.time.size(); ++i) {
    sum += rows.temperature[i];
    while (rows.time[i] - rows.time[first] > meanWindow + clockSlack) {
      sum -= rows.temperature[first++];
    }
    if (rows.time[i] - rows.time[from] >= meanWindow - clockSlack) {
      means.push_back(sum / static_cast<double>(i - first + 1));
    }
  }
  return means;
}

/// First row that belongs to the approach: 0, or from above the first at or below the target.
std::size_t approachFrom(const Stretch& rows) {
  if (rows.temperature.front() <= rows.target) {
    return 0;
  }
  const auto reached = std::find_if(rows.temperature.begin(), rows.temperature.end(),
                                    [&](double value) { return value <= rows.target; });
  return static_cast<std::size_t>(reached - rows.temperature.begin());
}

void giveOvershoot(StepResult& result, const std::string& heater, const Stretch& rows) {
  const ResultId id = keysOf<HeaterControlResults>().overshoot(heater);
  const auto means = runningMeans(rows, approachFrom(rows));
  if (means.empty()) {
    result.withhold(id, Text::tr("the log shows less than 5 s at or below its target"));
    return;
  }
  result.give(id, *std::max_element(means.begin(), means.end()) - rows.target);
}

/// First row after the last one outside the band; the count of rows when that is the last.
std::size_t settledRow(const Stretch& rows) {
  std::size_t row = rows.time.size();
  while (row > 0 && std::abs(rows.temperature[row - 1] - rows.target) <= holdBand) {
    --row;
  }
  return row;
}

void withholdSettled(StepResult& result, const std::string& heater) {
  for (const ResultId& id : keysOfSettled(heater)) {
    result.withhold(id, Text::tr("the temperature does not stay within ±1 °C"));
  }
}

void giveSlope(StepResult& result, const ResultId& id, const Stretch& held) {
  std::vector<double> minutes;
  for (const double time : held.time) {
    minutes.push_back(time / 60);
  }
  const auto line = maths::fitStraightLine(minutes, held.temperature);
  if (!line) {
    result.withhold(id, Text::tr("two rows or more are needed after settling"));
    return;
  }
  Quantity slope = plainQuantity(line->slope, "C/min");
  if (line->degreesOfFreedom > 0) {
    slope.u = line->slopeStandardError();
    slope.dof = line->degreesOfFreedom;
  }
  result.give(id, slope);
}

void giveSettled(StepResult& result, const std::string& heater, const Stretch& held) {
  const auto& t = held.temperature;
  std::vector<double> errors;
  for (const double value : t) {
    errors.push_back(value - held.target);
  }
  const auto& key = keysOf<HeaterControlResults>();
  result.give(key.meanError(heater), errors.size() > 1 ? meanOfReadingsWithoutCommonError(
                                                             errors, Instrument{"", 0, 0, 0, "C"}, "C")
                                                       : plainQuantity(errors.front(), "C"));
  const std::string tooShort = Text::tr("the log ends too soon after settling");
  if (t.size() > 1) {
    result.give(key.scatter(heater), maths::sampleStandardDeviation(t));
  } else {
    result.withhold(key.scatter(heater), tooShort);
  }
  const auto [low, high] = std::minmax_element(t.begin(), t.end());
  result.give(key.peakToPeak(heater), *high - *low);
  giveSlope(result, key.slope(heater), held);
  const auto means = runningMeans(held, 0);
  if (means.empty()) {
    result.withhold(key.greatestFall(heater), tooShort);
  } else {
    result.give(key.greatestFall(heater), held.target - *std::min_element(means.begin(), means.end()));
  }
}

void keepNearTarget(HoldAnswer& answer, const Stretch& rows) {
  const auto near = std::find_if(rows.temperature.begin(), rows.temperature.end(),
                                 [&](double value) { return std::abs(value - rows.target) <= nearTarget; });
  const auto first = static_cast<std::size_t>(near - rows.temperature.begin());
  for (std::size_t i = first; i < rows.time.size(); ++i) {
    answer.time.push_back(rows.time[i]);
    answer.error.push_back(rows.temperature[i] - rows.target);
  }
  for (const double mean : runningMeans(rows, first)) {
    answer.meanError.push_back(mean - rows.target);
  }
  const std::size_t without = rows.time.size() - answer.meanError.size();
  answer.meanTime.assign(rows.time.begin() + static_cast<std::ptrdiff_t>(without), rows.time.end());
}

Tolerance toleranceOfHold(const StepContext& context, const ResultId& held) {
  return context.changedTolerance("heater-control." + held.id).value_or(Tolerance{holdEnough, {}});
}

/// How long the log goes on after its first reading inside the band.
double sinceFirstInside(const Stretch& rows) {
  const auto inside = std::find_if(rows.temperature.begin(), rows.temperature.end(),
                                   [&](double value) { return std::abs(value - rows.target) <= holdBand; });
  return inside == rows.temperature.end()
             ? 0
             : rows.time.back() - rows.time[static_cast<std::size_t>(inside - rows.temperature.begin())];
}

void noteTooShort(StepResult& result, double held, double lasts, double enough) {
  result.addFinding(
      "log-too-short", Severity::caution,
      held > 0 ? say(Text::tr("The log ends {0} s after the temperature settled; {1} s are needed to "
                              "judge."),
                     formatFixed(held, 1), formatNumber(enough))
               : say(Text::tr("The log lasts {0} s at this target and ends before the temperature "
                              "settles; {1} s within ±1 °C are needed to judge."),
                     formatFixed(lasts, 0), formatNumber(enough)),
      {}, "log");
  result.next.push_back({"log", 1,
                         say(Text::tr("Log one hold again, from cold to {0} s after the temperature "
                                      "settled."),
                             formatNumber(enough))});
}

void noteNeverSettles(StepResult& result, double lasts, double enough) {
  result.addFinding(
      "never-settles", Severity::fault,
      say(Text::tr("In {0} s the temperature does not come to stay within ±1 °C of its target for {1} "
                   "s."),
          formatFixed(lasts, 0), formatNumber(enough)),
      {}, "log");
  result.next.push_back(
      {"log", 1,
       Text::tr("Begin a run with one step or relay test: it gives settings. Then log one "
                "hold with them.")});
}

/// Gives `held_s`; a log that ends too soon to tell is undecided, the rest follows from the tolerance.
void judgeHeld(StepResult& result, const StepContext& context, const std::string& heater, double held,
               const Stretch& rows) {
  const double lasts = rows.time.back() - rows.time.front();
  const ResultId id = keysOf<HeaterControlResults>().held(heater);
  const Tolerance tolerance = toleranceOfHold(context, id);
  const double enough = tolerance.low.value_or(0);
  result.give(id, held);
  if (held >= enough) {
    return;
  }
  if (lasts < enough || (held > 0 && sinceFirstInside(rows) < patience * enough)) {
    result.judge(id, {Verdict::undecided}, tolerance);
    noteTooShort(result, held, lasts, enough);
  } else {
    noteNeverSettles(result, lasts, enough);
  }
}

}  // namespace

std::vector<ResultId> holdTestResults(const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  std::vector<ResultId> all = keysOfSettled(heater);
  all.push_back(key.overshoot(heater));
  all.push_back(key.held(heater));
  return all;
}

std::optional<HoldAnswer> giveHoldTest(StepResult& result, const HeaterControlInputs& inputs,
                                       const std::string& heater, const HeaterLog& log,
                                       const StepContext& context) {
  if (log.target.empty() && !inputs.target && !log.targetRefused.empty()) {
    withholdRefused(result, holdTestResults(heater), log.targetRefused, "log");
    return std::nullopt;
  }
  if (log.target.empty() && !areEntered(result, holdTestResults(heater), {{"target_C", inputs.target}})) {
    return std::nullopt;
  }
  const Stretch rows =
      log.target.empty() ? stretchOf(log, 0, log.rows(), *inputs.target) : longestStretch(result, log);
  const double lasts = rows.time.back() - rows.time.front();
  if (lasts < meanWindow) {
    throw Refusal{say(Text::tr("The log stays at its target of {0} °C for {1} s; 5 s or more are needed."),
                      formatNumber(rows.target), formatFixed(lasts, 1)),
                  "log"};
  }
  giveOvershoot(result, heater, rows);
  HoldAnswer answer;
  answer.target = rows.target;
  keepNearTarget(answer, rows);
  const std::size_t settled = settledRow(rows);
  double held = 0;
  if (settled < rows.time.size()) {
    answer.settledAt = rows.time[settled];
    held = rows.time.back() - *answer.settledAt;
    result.give(keysOf<HeaterControlResults>().settling(heater), *answer.settledAt - rows.time.front());
    giveSettled(result, heater,
                {rows.time.subspan(settled), rows.temperature.subspan(settled), rows.target});
  } else {
    withholdSettled(result, heater);
  }
  judgeHeld(result, context, heater, held, rows);
  return answer;
}

}  // namespace fettle
