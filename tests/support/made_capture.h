#pragma once
#include <fmt/format.h>

#include <cmath>
#include <complex>
#include <cstddef>
#include <iterator>
#include <numbers>
#include <random>
#include <string>

namespace fettle::tests {

/// An invented sweep as CSV text: time_s, ax, ay, az in s and mm/s²; 5 to 120 Hz, amplitude proportional to
/// frequency, through two modes (41.3 Hz, damping 0.06; 73 Hz, 0.05), with noise of a fixed seed.
inline std::string madeCapture(std::size_t rows, double sampleRate) {
  // |1 + sum c r²/(1 - r² + 2 i z r)| of the two modes: what the sensor shows of a slow sweep.
  const auto mode = [](double frequency, double own, double damping, double share) {
    const double r = frequency / own;
    return share * r * r / std::complex<double>(1 - r * r, 2 * damping * r);
  };
  constexpr double from = 5;
  constexpr double to = 120;
  const double duration = static_cast<double>(rows) / sampleRate;
  std::mt19937 generator(7);
  std::normal_distribution<double> noise(0, 120);
  std::string text = "time_s,ax,ay,az\n";
  text.reserve(rows * 48);
  for (std::size_t i = 0; i < rows; ++i) {
    const double t = static_cast<double>(i) / sampleRate;
    const double frequency = from + (to - from) * t / duration;
    const double phase = 2 * std::numbers::pi * (from * t + (to - from) * t * t / (2 * duration));
    const std::complex<double> response =
        1.0 + mode(frequency, 41.3, 0.06, 1.0) + mode(frequency, 73.0, 0.05, 0.4);
    const std::complex<double> wave = response * std::polar(55.0 * frequency, phase);
    fmt::format_to(std::back_inserter(text), "{:.6f},{:.3f},{:.3f},{:.3f}\n", t,
                   wave.real() + noise(generator), noise(generator), 9806.65 + noise(generator));
  }
  return text;
}

}  // namespace fettle::tests
