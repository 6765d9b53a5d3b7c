#include "core/steps/heater_control/step_test.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/maths/descriptive.h"
#include "core/maths/straight_line.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

constexpr double leastRise = 1.5;        // °C
constexpr double risePerScatter = 5;     // times s at rest
constexpr double steadyDrift = 1;        // °C per minute
constexpr double shownStart = 10;        // s
constexpr std::size_t fewestAfter = 20;  // rows
constexpr double shareOfRange = 0.9;
constexpr double patterned = 0.5;  // lag-1 autocorrelation

/// When the duty changes, from what to what, and the row behind the last one that counts.
struct Change {
  double at, from, to;
  std::size_t end;
};

std::optional<Change> typedChange(StepResult& result, const HeaterControlInputs& inputs,
                                  const std::string& heater, const HeaterLog& log) {
  const std::vector<NeededEntry> entries{
      {"step_at_s", inputs.stepAt}, {"duty_before", inputs.dutyBefore}, {"duty_after", inputs.dutyAfter}};
  const bool begun = inputs.stepAt || inputs.dutyBefore || inputs.dutyAfter;
  if (!log.dutyRefused.empty() && !begun) {
    withholdRefused(result, stepTestResults(heater), log.dutyRefused, "log");
    return std::nullopt;
  }
  if (!areEntered(result, stepTestResults(heater), entries)) {
    return std::nullopt;
  }
  if (*inputs.dutyBefore == *inputs.dutyAfter) {
    throw Refusal{say(Text::tr("The duty before and after the step are both {0}; two different ones are "
                               "needed."),
                      formatNumber(*inputs.dutyBefore)),
                  "duty_after"};
  }
  return Change{*inputs.stepAt, *inputs.dutyBefore, *inputs.dutyAfter, log.rows()};
}

std::optional<Change> changeOf(StepResult& result, const HeaterControlInputs& inputs,
                               const std::string& heater, const HeaterLog& log) {
  if (log.duty.empty()) {
    return typedChange(result, inputs, heater, log);
  }
  const auto changes = dutyChanges(log.duty);
  if (changes.empty()) {
    throw Refusal{say(Text::tr("The duty stays at {0} throughout the log; one step of it is needed."),
                      formatNumber(log.duty.front())),
                  "log"};
  }
  const std::size_t step = changes.front();
  Change change{log.time[step], log.duty[step - 1], log.duty[step], log.rows()};
  if (changes.size() > 1) {
    change.end = changes[1];
    result.addFinding(
        "second-step", Severity::caution,
        say(Text::tr("The duty changes {0} times. Only the answer to the first change, at {1} s, is "
                     "used; rows from {2} s on are left out."),
            changes.size(), formatFixed(change.at, 1), formatFixed(log.time[change.end], 1)),
        {}, "log");
  }
  return change;
}

StepAnswer cut(const HeaterLog& log, const Change& change) {
  StepAnswer answer{change.at, change.to - change.from, {}, {}, {}};
  const auto end = static_cast<std::ptrdiff_t>(change.end);
  answer.time.assign(log.time.begin(), log.time.begin() + end);
  answer.temperature.assign(log.temperature.begin(), log.temperature.begin() + end);
  const auto after =
      std::count_if(answer.time.begin(), answer.time.end(), [&](double t) { return t >= change.at; });
  if (after < static_cast<std::ptrdiff_t>(fewestAfter)) {
    throw Refusal{say(Text::tr("Only {0} rows follow the step at {1} s; {2} or more are needed."), after,
                      formatFixed(change.at, 1), fewestAfter),
                  "log"};
  }
  return answer;
}

std::size_t rowsBefore(const StepAnswer& answer) {
  return static_cast<std::size_t>(
      std::lower_bound(answer.time.begin(), answer.time.end(), answer.stepTime) - answer.time.begin());
}

/// One more test, for the first reason there is.
void askAgain(StepResult& result, std::string how) {
  if (result.next.empty()) {
    result.next.push_back({"log", 1, std::move(how)});
  }
}

void noteStart(StepResult& result, const StepAnswer& answer) {
  const std::size_t before = rowsBefore(answer);
  const double shown = before > 0 ? answer.stepTime - answer.time.front() : 0;
  if (before < 5 || shown < shownStart) {
    result.addFinding(
        "start-not-shown", Severity::caution,
        say(Text::tr("The log shows {0} s before the step; with {1} s or more it could be seen that "
                     "the start is steady."),
            formatFixed(shown, 1), formatNumber(shownStart)),
        {}, "log");
    return;
  }
  const std::span<const double> time(answer.time.data(), before);
  const auto line = maths::fitStraightLine(time, std::span(answer.temperature.data(), before));
  if (line && std::abs(line->slope) * 60 > steadyDrift && line->slopeProbability() < 0.05) {
    result.addFinding(
        "unsteady-start", Severity::caution,
        say(Text::tr("Before the step the temperature drifts by {0} °C a minute. Gain and time "
                     "constant take that for an answer: wait until it stands still, and repeat."),
            formatFixed(line->slope * 60, 1)),
        {}, "log");
    askAgain(result, Text::tr("Log one step test again, from a temperature that stands still."));
  }
}

/// Whether the temperature follows the duty; the fault when it does not.
bool follows(StepResult& result, const StepAnswer& answer) {
  const std::span<const double> all(answer.temperature);
  const std::size_t before = rowsBefore(answer);
  const double start = before > 0 ? maths::mean(all.first(before)) : all.front();
  const double scatter = before > 2 ? maths::sampleStandardDeviation(all.first(before)) : 0;
  const double end = maths::mean(all.last(std::max<std::size_t>((all.size() - before) / 10, 1)));
  const double change = (end - start) * (answer.stepSize > 0 ? 1 : -1);
  const double least = std::max(leastRise, risePerScatter * scatter);
  if (change < -least) {
    result.addFinding(
        "falling", Severity::fault,
        say(Text::tr("The temperature goes from {0} to {1} °C against a change of duty of {2}: heater "
                     "or sensor do not belong together, or the heater came off. Switch off."),
            formatFixed(start, 1), formatFixed(end, 1), formatFixed(answer.stepSize, 2)),
        "safety", "log");
  } else if (change < least) {
    result.addFinding(
        "no-rise", Severity::fault,
        say(Text::tr("A change of duty of {0} moves the temperature by {1} °C only; {2} °C is the "
                     "least that counts. The test failed: look at heater, sensor and wiring."),
            formatFixed(answer.stepSize, 2), formatFixed(end - start, 1), formatFixed(least, 1)),
        "safety", "log");
  }
  return change >= least;
}

/// Not checked where room or maximum are not known.
void noteSize(StepResult& result, const StepAnswer& answer, double room, std::optional<double> allowed) {
  const double maximum = allowed.value_or(std::nan(""));
  const double final = answer.fit.start + answer.fit.model.gain * answer.stepSize;
  if (final - room > shareOfRange * (maximum - room)) {
    result.addFinding(
        "step-too-large", Severity::caution,
        say(Text::tr("This duty ends at {0} °C, above {1} °C = room + 0.9·(maximum − room). Take a "
                     "smaller step."),
            formatFixed(final, 0), formatFixed(room + shareOfRange * (maximum - room), 0)),
        {}, "log");
    askAgain(result, Text::tr("Log one step test again, with a smaller change of duty."));
  }
}

void noteFit(StepResult& result, const StepAnswer& answer, double interval) {
  const maths::DeadTimeModel& model = answer.fit.model;
  const double lasts = answer.time.back() - answer.stepTime;
  const double wanted = model.deadTime + 3 * model.timeConstant;
  if (lasts < wanted) {
    result.addFinding(
        "step-too-short", Severity::caution,
        say(Text::tr("The log follows the step for {0} s; the end is extrapolated. {1} s, dead time "
                     "and three time constants, show it."),
            formatFixed(lasts, 0), formatFixed(wanted, 0)),
        {}, "log");
    askAgain(result, say(Text::tr("Log one step test again, for {0} s after the duty changes."),
                         formatFixed(wanted, 0)));
  }
  if (answer.fit.deadTimeHeld || interval > model.deadTime / 3) {
    result.addFinding("coarse-log", Severity::caution,
                      say(Text::tr("Rows {0} s apart hardly show a dead time of {1} s. Log faster."),
                          formatFixed(interval, 2), formatFixed(model.deadTime, 2)),
                      {}, "log");
    askAgain(result, Text::tr("Log one step test again, with rows closer together."));
  }
  const auto pattern = maths::lag1Autocorrelation(answer.fit.residuals);
  if (pattern && *pattern > patterned) {
    result.addFinding(
        "residuals-patterned", Severity::note,
        say(Text::tr("Neighbouring residuals resemble each other ({0}): the heater is not quite of "
                     "first order, and the standard errors are too small."),
            formatFixed(*pattern, 2)),
        {}, "log");
  }
}

void withholdModel(StepResult& result, const std::string& heater, const std::string& why) {
  for (const ResultId& id : stepTestResults(heater)) {
    result.withhold(id, why);
  }
}

Quantity fitted(const maths::DeadTimeFit& fit, double value, int parameter, const char* unit) {
  Quantity quantity = plainQuantity(value, unit);
  if (fit.degreesOfFreedom > 0 && !(parameter == 3 && fit.deadTimeHeld)) {
    quantity.u = fit.standardError(parameter);
    quantity.dof = fit.degreesOfFreedom;
  }
  return quantity;
}

}  // namespace

std::vector<ResultId> stepTestResults(const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  return {key.gain(heater), key.timeConstant(heater), key.deadTime(heater)};
}

std::optional<StepAnswer> giveStepTest(StepResult& result, const HeaterControlInputs& inputs,
                                       const std::string& heater, const HeaterLog& log,
                                       std::optional<double> maximum) {
  const auto change = changeOf(result, inputs, heater, log);
  if (!change) {
    return std::nullopt;
  }
  StepAnswer answer = cut(log, *change);
  noteStart(result, answer);
  if (!follows(result, answer)) {
    withholdModel(result, heater, Text::tr("the temperature does not follow the duty"));
    return std::nullopt;
  }
  auto fit = maths::fitDeadTimeModel(answer.time, answer.temperature, answer.stepTime, answer.stepSize);
  if (!fit || !(fit->model.gain > 0) || !(fit->model.timeConstant > 0)) {
    withholdModel(result, heater, fit ? Text::tr("no heater answers like this") : fit.error());
    return std::nullopt;
  }
  answer.fit = std::move(*fit);
  const maths::DeadTimeModel& model = answer.fit.model;
  const auto& key = keysOf<HeaterControlResults>();
  result.give(key.gain(heater), fitted(answer.fit, model.gain, 1, "C"));
  result.give(key.timeConstant(heater), fitted(answer.fit, model.timeConstant, 2, "s"));
  result.give(key.deadTime(heater), fitted(answer.fit, model.deadTime, 3, "s"));
  noteSize(result, answer, inputs.room, maximum);
  noteFit(result, answer, log.interval());
  return answer;
}

HeaterModel modelOf(const StepAnswer& answer) {
  HeaterModel model;
  model.plant = answer.fit.model;
  model.covariance = answer.fit.covariance.bottomRightCorner<3, 3>();
  model.dof = answer.fit.degreesOfFreedom;
  return model;
}

std::optional<HeaterModel> giveTypedModel(StepResult& result, const HeaterControlInputs& inputs,
                                          const std::string& heater) {
  const auto& key = keysOf<HeaterControlResults>();
  const std::pair<ResultId, NeededEntry> typed[] = {
      {key.gain(heater), {"gain_C", inputs.gain}},
      {key.timeConstant(heater), {"tau_s", inputs.timeConstant}},
      {key.deadTime(heater), {"theta_s", inputs.deadTime}}};
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
  model.plant = maths::DeadTimeModel{*inputs.gain, *inputs.timeConstant, *inputs.deadTime};
  return model;
}

}  // namespace fettle
