#include "core/maths/control_loop.h"

#include <algorithm>
#include <cmath>

namespace fettle::maths {
namespace {

constexpr double filterDivisor = 10;

/// K exp(-L s)/(T s + 1) for an input held over each period: the dead time is n whole periods and a rest.
class SampledPlant {
 public:
  SampledPlant(const DeadTimeModel& model, double period) {
    const double periods = std::floor(model.deadTime / period);
    const double rest = model.deadTime - periods * period;
    m_decay = std::exp(-period / model.timeConstant);
    const double decayAfterRest = std::exp(-(period - rest) / model.timeConstant);
    m_older = model.gain * (decayAfterRest - m_decay);
    m_newer = model.gain * (1 - decayAfterRest);
    m_inputs.assign(static_cast<std::size_t>(periods) + 2, 0.0);
  }

  /// Output one period later, above rest.
  double step(double input) {
    const std::size_t count = m_inputs.size();
    m_inputs[m_at] = input;
    const double newer = m_inputs[(m_at + 2) % count];  // count - 2 periods ago
    const double older = m_inputs[(m_at + 1) % count];  // count - 1 periods ago
    m_at = (m_at + 1) % count;
    m_output = m_decay * m_output + m_older * older + m_newer * newer;
    return m_output;
  }

 private:
  double m_decay, m_older, m_newer;
  std::vector<double> m_inputs;  ///< a ring of the latest ones
  std::size_t m_at = 0;
  double m_output = 0;
};

class SampledController {
 public:
  explicit SampledController(const ControlLoop& loop) : m_loop(loop), m_last(loop.rest) {
    const PidSetting& pid = loop.controller;
    const double lag = pid.derivativeTime / filterDivisor;
    if (lag > 0) {
      m_keep = std::exp(-loop.period / lag);
      m_slope = pid.derivativeGain() * (1 - m_keep) / loop.period;
    }
    m_integralStep = pid.integralTime > 0 ? pid.integralGain() * loop.period : 0;
  }

  double ask(double output) {
    const double error = m_loop.target - output;
    m_derivative = m_keep * m_derivative - m_slope * (output - m_last);
    m_last = output;
    const double direct = m_loop.controller.gain * error + m_derivative;
    const double grown = m_integral + m_integralStep * error;
    const bool drivenFurther =
        (direct + grown > m_loop.highest && error > 0) || (direct + grown < m_loop.lowest && error < 0);
    if (!drivenFurther) {
      m_integral = grown;
    }
    return std::clamp(direct + m_integral, m_loop.lowest, m_loop.highest);
  }

 private:
  const ControlLoop& m_loop;
  double m_keep = 0, m_slope = 0, m_integralStep = 0;
  double m_integral = 0, m_derivative = 0, m_last;
};

}  // namespace

LoopResponse simulateLoop(const ControlLoop& loop, double duration) {
  SampledPlant plant(loop.plant, loop.period);
  SampledController controller(loop);
  LoopResponse response;
  const auto samples = static_cast<std::size_t>(std::floor(duration / loop.period)) + 1;
  for (auto* column : {&response.time, &response.output, &response.asked}) {
    column->reserve(samples);
  }
  double output = loop.rest;
  for (std::size_t i = 0; i < samples; ++i) {
    const double time = static_cast<double>(i) * loop.period;
    const double asked = controller.ask(output);
    response.time.push_back(time);
    response.output.push_back(output);
    response.asked.push_back(asked);
    output = loop.rest + plant.step(asked - (time >= loop.loadFrom ? loop.load : 0));
  }
  return response;
}

std::optional<double> settledFrom(const LoopResponse& response, double target, double band, double until) {
  const auto end = static_cast<std::size_t>(
      std::upper_bound(response.time.begin(), response.time.end(), until) - response.time.begin());
  std::size_t inside = end;
  while (inside > 0 && std::abs(response.output[inside - 1] - target) <= band) {
    --inside;
  }
  return inside == end ? std::nullopt : std::optional(response.time[inside]);
}

}  // namespace fettle::maths
