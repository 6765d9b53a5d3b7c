#pragma once
#include <cmath>
#include <cstddef>
#include <numbers>
#include <random>
#include <vector>

namespace fettle::tests {

/// A belt plucked once a second, each note dying away, with noise and steady hum.
struct PluckedBelt {
  double frequency = 100;                        ///< Hz
  std::vector<double> amplitudes{1, 0.5, 0.25};  ///< of the harmonics, the fundamental first
  double stiffness = 0;                          ///< B: f_n ∝ n·√(1 + B·n²) (Fletcher 1964)
  double decay = 0.25;  ///< s, time constant of the fundamental; the n-th √n times faster
  int plucks = 4;
  double rate = 8000;    ///< samples a second
  double noise = 0.002;  ///< standard deviation
  double hum = 0;        ///< amplitude of a steady tone at humFrequency and half of it at twice that
  double humFrequency = 50;
  unsigned seed = 1;
};

/// Samples of about full scale 0.3.
inline std::vector<double> soundOf(const PluckedBelt& belt) {
  std::mt19937 engine(belt.seed);
  std::normal_distribution<double> noise(0, belt.noise);
  std::vector<double> samples(static_cast<std::size_t>(belt.rate * belt.plucks));
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double time = static_cast<double>(i) / belt.rate;
    const double since = time - std::floor(time);
    const double turn = 2 * std::numbers::pi;
    double sum = 0;
    for (std::size_t k = 0; k < belt.amplitudes.size(); ++k) {
      const auto n = static_cast<double>(k + 1);
      const double frequency =
          n * belt.frequency * std::sqrt((1 + belt.stiffness * n * n) / (1 + belt.stiffness));
      sum += belt.amplitudes[k] * std::exp(-since * std::sqrt(n) / belt.decay) *
             std::sin(turn * frequency * since);
    }
    const double hum = belt.hum * (std::sin(turn * belt.humFrequency * time) +
                                   0.5 * std::sin(2 * turn * belt.humFrequency * time));
    samples[i] = 0.15 * sum + 0.15 * hum + noise(engine);
  }
  return samples;
}

}  // namespace fettle::tests
