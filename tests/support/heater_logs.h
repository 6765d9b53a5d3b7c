#pragma once
#include <QString>
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>

#include "core/steps/heater_control.h"

namespace fettle::tests {

/// A log with the given columns over rows `interval` s apart from 0 on; an empty function leaves its column
/// out.
struct LogColumns {
  std::function<double(double time)> temperature, duty, target;
};

inline CapturePointer heaterLog(double lasts, double interval, const LogColumns& columns) {
  auto log = std::make_shared<Capture>();
  log->name = "made.csv";
  const int rows = static_cast<int>(std::floor(lasts / interval)) + 1;
  for (int i = 0; i < rows; ++i) {
    const double time = i * interval;
    log->columns["time_s"].push_back(time);
    log->columns["temp_C"].push_back(columns.temperature(time));
    if (columns.duty) {
      log->columns["duty"].push_back(columns.duty(time));
    }
    if (columns.target) {
      log->columns["target_C"].push_back(columns.target(time));
    }
  }
  return log;
}

/// Duty `from`, then `to` from 30 s on.
inline std::function<double(double)> dutyStep(double from, double to) {
  return [=](double time) { return time < 30 ? from : to; };
}

/// A heater of first order with dead time that rests at `start` and answers a step at 30 s.
inline std::function<double(double)> answerTo(double stepSize, double start, double gain, double tau,
                                              double theta) {
  return [=](double time) {
    const double since = time - 30 - theta;
    return start + (since > 0 ? -stepSize * gain * std::expm1(-since / tau) : 0);
  };
}

/// A triangle between −1 and 1 of this period that rises from time 0 on.
inline double triangle(double time, double period) {
  const double phase = time / period - std::floor(time / period);
  return phase < 0.5 ? 4 * phase - 1 : 3 - 4 * phase;
}

inline HeaterControlInputs heaterInputs(const char* mode, CapturePointer log) {
  HeaterControlInputs inputs;
  inputs.heater = "hot_end";
  inputs.mode = mode;
  inputs.log = std::move(log);
  return inputs;
}

/// The sentence with which inputs were refused; empty when they were accepted.
inline QString refusalOf(const HeaterControlInputs& inputs, const StepContext& context = {}) {
  try {
    (void)evaluate(inputs, context);
  } catch (const Refusal& refused) {
    return QString::fromStdString(refused.sentence);
  }
  return {};
}

}  // namespace fettle::tests
