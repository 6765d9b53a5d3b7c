#pragma once
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>
#include <string>

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

inline StepContext sheetOf(double hotEndMax) {
  StepContext context;
  context.sheet.hotEndMax = hotEndMax;
  return context;
}

/// A clean step of 0.2 from a steady 150 °C: gain 450 °C, time constant 120 s, dead time 6 s.
inline HeaterControlInputs cleanStep() {
  auto inputs = heaterInputs(
      "step", heaterLog(600, 0.5, {answerTo(0.2, 150, 450, 120, 6), dutyStep(0.25, 0.45), {}}));
  inputs.target = 215;
  return inputs;
}

inline constexpr double swingPeriod = 40, swingAmplitude = 3;

/// A swing of ±3 °C about 200 °C with a period of 40 s, the heater on in its rising half, off in the other:
/// duties 0.2 and 0.6. The swing grows by `growth` of itself each period.
inline LogColumns swing(double growth = 0, double mean = 200, double onShare = 0.5) {
  return {
      [=](double t) {
        const double size = swingAmplitude * (1 + growth * std::floor(t / swingPeriod));
        return mean + size * triangle(t, swingPeriod);
      },
      [=](double t) { return t / swingPeriod - std::floor(t / swingPeriod) < onShare - 1e-9 ? 0.6 : 0.2; },
      [](double) { return 200.0; }};
}

inline HeaterControlInputs relay(const LogColumns& columns, double lasts = 300) {
  auto inputs = heaterInputs("relay", heaterLog(lasts, 0.5, columns));
  inputs.hysteresis = 0.5;
  return inputs;
}

/// A straight approach from 25 °C to the target in 60 s and what follows it.
inline HeaterControlInputs hold(double lasts, const std::function<double(double)>& after) {
  return heaterInputs("hold",
                      heaterLog(lasts, 0.5,
                                {[=](double t) { return t < 60 ? 25 + 190 * t / 60 : 215 + after(t - 60); },
                                 {},
                                 [](double) { return 215.0; }}));
}

/// Where inputs were refused: the path of the first refusal, "-" for one without; empty when they were not.
inline std::string refusedAt(const HeaterControlInputs& inputs, const StepContext& context = {}) {
  const StepResult result = evaluate(inputs, context);
  for (const auto& finding : result.findings) {
    if (finding.code == "refused") {
      return finding.at.empty() ? "-" : finding.at;
    }
  }
  return {};
}

/// The log with one value of a column replaced.
inline CapturePointer withValue(const CapturePointer& log, const char* column, std::size_t row,
                                double value) {
  auto changed = std::make_shared<Capture>(*log);
  changed->columns[column].at(row) = value;
  return changed;
}

/// The log without a column.
inline CapturePointer without(const CapturePointer& log, const char* column) {
  auto changed = std::make_shared<Capture>(*log);
  changed->columns.erase(column);
  return changed;
}

}  // namespace fettle::tests
