#include "demo-sessions/make_logs.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <deque>
#include <fstream>
#include <numbers>
#include <random>
#include <vector>

namespace fettle::demo {
namespace {

constexpr double room = 21;      // °C
constexpr double logStep = 0.5;  // s between rows
constexpr int finer = 50;        // steps of the simulation between rows

/// An invented hot end: two lags in a row behind a dead time.
class HotEnd {
 public:
  double temperature() const { return room + m_sensor; }

  void run(double duty, double seconds) {
    m_duties.push_back(duty);
    const double late = m_duties.front();
    if (m_duties.size() > deadRows) {
      m_duties.pop_front();
    }
    for (int i = 0; i < finer; ++i) {
      const double dt = seconds / finer;
      m_block += dt * (gain * late - m_block) / blockLag;
      m_sensor += dt * (m_block - m_sensor) / sensorLag;
    }
  }

 private:
  static constexpr double gain = 460, blockLag = 168, sensorLag = 4.2;  // °C per full duty, s
  static constexpr std::size_t deadRows = 5;                            // 2.5 s
  double m_block = 0, m_sensor = 0;
  std::deque<double> m_duties;
};

bool writeStep(const std::filesystem::path& file) {
  std::mt19937 engine(31);
  std::normal_distribution<double> noise(0, 0.12);
  HotEnd hotEnd;
  for (int i = 0; i < 4000; ++i) {
    hotEnd.run(0.30, logStep);
  }
  std::ofstream out(file);
  out << "time_s,temp_C,duty\n";
  for (int i = 0; i < 2200; ++i) {
    const double duty = i < 120 ? 0.30 : 0.42;
    char line[64];
    std::snprintf(line, sizeof line, "%.1f,%.2f,%.2f\n", i * logStep, hotEnd.temperature() + noise(engine),
                  duty);
    out << line;
    hotEnd.run(duty, logStep);
  }
  return static_cast<bool>(out.flush());
}

bool writeHold(const std::filesystem::path& file) {
  std::mt19937 engine(32);
  std::normal_distribution<double> noise(0, 0.12);
  constexpr double target = 240, proportional = 0.028, integral = 0.0005;
  HotEnd hotEnd;
  double sum = 0;
  std::ofstream out(file);
  out << "time_s,temp_C,target_C\n";
  for (int i = 0; i < 1800; ++i) {
    const double shown = hotEnd.temperature() + noise(engine);
    char line[64];
    std::snprintf(line, sizeof line, "%.1f,%.2f,%.0f\n", i * logStep, shown, target);
    out << line;
    const double error = target - shown;
    const double wanted = proportional * error + sum;
    const double duty = std::min(1.0, std::max(0.0, wanted));
    sum += wanted == duty ? integral * error * logStep : 0;
    hotEnd.run(duty, logStep);
  }
  return static_cast<bool>(out.flush());
}

void put(std::ofstream& out, std::uint32_t value, int bytes) {
  for (int i = 0; i < bytes; ++i) {
    out.put(static_cast<char>(value >> (8 * i) & 0xFF));
  }
}

/// A plucked belt: the second harmonic is the loudest, as with a pluck near the middle of half the span.
bool writePluck(const std::filesystem::path& file, double fundamental, unsigned seed) {
  constexpr std::uint32_t rate = 8000, frames = 12000;
  std::mt19937 engine(seed);
  std::normal_distribution<double> hiss(0, 0.004);
  std::ofstream out(file, std::ios::binary);
  out << "RIFF";
  put(out, 36 + 2 * frames, 4);
  out << "WAVEfmt ";
  put(out, 16, 4);
  put(out, 1, 2);
  put(out, 1, 2);
  put(out, rate, 4);
  put(out, 2 * rate, 4);
  put(out, 2, 2);
  put(out, 16, 2);
  out << "data";
  put(out, 2 * frames, 4);
  for (std::uint32_t i = 0; i < frames; ++i) {
    const double time = static_cast<double>(i) / rate;
    double level = hiss(engine);
    constexpr double strengths[] = {0.22, 0.34, 0.12, 0.05};
    for (int k = 0; k < 4; ++k) {
      level += strengths[k] * std::exp(-(2.2 + 1.1 * k) * time) *
               std::sin(2 * std::numbers::pi * fundamental * (k + 1) * time);
    }
    put(out, static_cast<std::uint32_t>(static_cast<std::int16_t>(std::lround(32767 * level))), 2);
  }
  return static_cast<bool>(out.flush());
}

}  // namespace

bool makeLogs(const std::filesystem::path& folder) {
  return writeStep(folder / "hot-end-step.csv") && writeHold(folder / "hot-end-hold.csv") &&
         writePluck(folder / "belt-left.wav", 96.3, 41) && writePluck(folder / "belt-right.wav", 88.1, 42);
}

}  // namespace fettle::demo
