#pragma once
#include <cmath>
#include <cstddef>
#include <memory>
#include <numbers>
#include <random>
#include <vector>

#include "core/measure/capture.h"

namespace fettle::tests {

/// A mode of the simulated machine: its share c of the motion of the point the sensor sits on.
struct TrueMode {
  double frequency = 0;  ///< Hz
  double damping = 0;
  double coefficient = 0;
};

/// How the simulated axis is shaken and sampled.
struct Shaking {
  double from = 5, to = 120, seconds = 30;  ///< of the sweep, Hz and s
  double rate = 1600;                       ///< samples a second
  bool constantVelocity = true;             ///< acceleration amplitude as the frequency; else constant
  double strength = 60;                     ///< mm/s² per Hz, or mm/s²
  double noise = 100;                       ///< mm/s², standard deviation
  unsigned seed = 1;
};

/// One mode under an input that is constant from sample to sample, q'' + 2ζω q' + ω² q = u, stepped exactly
/// by the matrix exponential (any textbook of linear systems).
class ExactOscillator {
 public:
  ExactOscillator(double frequency, double damping, double step) {
    m_omega = 2 * std::numbers::pi * frequency;
    m_damping = damping;
    const double decay = std::exp(-damping * m_omega * step);
    const double root = std::sqrt(1 - damping * damping);
    const double angle = m_omega * root * step;
    m_c = decay * (std::cos(angle) + damping / root * std::sin(angle));
    m_s = decay * std::sin(angle) / (m_omega * root);
    m_d = decay * (std::cos(angle) - damping / root * std::sin(angle));
  }
  /// Acceleration q'' under the input, after which the state moves on by one step.
  double step(double input) {
    const double acceleration = input - 2 * m_damping * m_omega * m_velocity - m_omega * m_omega * m_place;
    const double rest = input / (m_omega * m_omega);
    const double place = m_place - rest;
    m_place = m_c * place + m_s * m_velocity + rest;
    m_velocity = m_d * m_velocity - m_omega * m_omega * m_s * place;
    return acceleration;
  }

 private:
  double m_omega = 0, m_damping = 0, m_c = 0, m_s = 0, m_d = 0;
  double m_place = 0, m_velocity = 0;
};

/// Acceleration of a point of a base-excited structure under a swept sine: a = u − Σ c_k q_k'', computed at
/// eight times the sampling rate.
inline std::vector<double> sweptSignal(const std::vector<TrueMode>& modes, const Shaking& shaking) {
  constexpr int finer = 8;
  const double step = 1 / (finer * shaking.rate);
  std::vector<ExactOscillator> oscillators;
  for (const TrueMode& mode : modes) {
    oscillators.emplace_back(mode.frequency, mode.damping, step);
  }
  std::mt19937 engine(shaking.seed);
  std::normal_distribution<double> noise(0, shaking.noise);
  std::vector<double> samples(static_cast<std::size_t>(shaking.rate * shaking.seconds));
  const double sweepRate = (shaking.to - shaking.from) / shaking.seconds;
  for (std::size_t i = 0; i < samples.size() * finer; ++i) {
    const double time = static_cast<double>(i) * step;
    const double phase = 2 * std::numbers::pi * (shaking.from + 0.5 * sweepRate * time) * time;
    const double frequency = shaking.from + sweepRate * time;
    const double input = shaking.strength * (shaking.constantVelocity ? frequency : 1.0) * std::sin(phase);
    double output = input;
    for (std::size_t k = 0; k < modes.size(); ++k) {
      output -= modes[k].coefficient * oscillators[k].step(input);
    }
    if (i % finer == 0) {
      samples[i / finer] = output + noise(engine);
    }
  }
  return samples;
}

/// A capture with the signal in column ax and noise in the other two; 9807 mm/s² of gravity in az.
inline std::shared_ptr<Capture> captureOf(const std::vector<double>& signal, double rate, unsigned seed = 7,
                                          double noise = 100) {
  auto capture = std::make_shared<Capture>();
  capture->name = "made.csv";
  std::mt19937 engine(seed);
  std::normal_distribution<double> hiss(0, noise);
  auto& columns = capture->columns;
  for (std::size_t i = 0; i < signal.size(); ++i) {
    columns["time_s"].push_back(static_cast<double>(i) / rate);
    columns["ax"].push_back(signal[i]);
    columns["ay"].push_back(hiss(engine));
    columns["az"].push_back(9807 + hiss(engine));
  }
  return capture;
}

}  // namespace fettle::tests
