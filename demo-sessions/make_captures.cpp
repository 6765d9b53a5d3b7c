#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>

#include "demo-sessions/make_logs.h"
#include "tests/support/swept_machine.h"

// Makes the captures of the invented demo machine, vibration, heater logs and sounds: usage
// fettle_make_captures FOLDER. Modes, sweep and seeds are fixed: with one standard library the bytes are
// always the same. The modes are invented, nobody measured them.

namespace {

using fettle::tests::Shaking;
using fettle::tests::TrueMode;

struct Recording {
  const char* file;
  bool alongY;
  std::vector<TrueMode> modes;
  unsigned seed;
};

const std::vector<Recording> recordings{
    {"x-centre.csv", false, {{47.3, 0.061, 0.72}, {86.5, 0.045, 0.21}}, 21},
    {"x-front.csv", false, {{45.1, 0.064, 0.70}, {83.2, 0.047, 0.26}}, 22},
    {"y-centre.csv", true, {{33.8, 0.075, 0.84}}, 23},
};

/// The sweep lasts 12 s: 9.2 Hz/s, where the sharpest mode allows 3.6·(ζf)² = 23 Hz/s.
Shaking sweepOf(const Recording& recording) {
  Shaking sweep;
  sweep.from = 5;
  sweep.to = 115;
  sweep.seconds = 12;
  sweep.rate = 1000;
  sweep.strength = 55;
  sweep.noise = 90;
  sweep.seed = recording.seed;
  return sweep;
}

bool write(const Recording& recording, const std::filesystem::path& folder) {
  const Shaking sweep = sweepOf(recording);
  const std::vector<double> signal = fettle::tests::sweptSignal(recording.modes, sweep);
  std::mt19937 engine(recording.seed + 100);
  std::normal_distribution<double> hiss(0, sweep.noise);
  std::normal_distribution<double> lateness(0, 0.01 / sweep.rate);
  std::ofstream file(folder / recording.file);
  file << "time_s,ax,ay,az\n";
  for (std::size_t i = 0; i < signal.size(); ++i) {
    const double time = i == 0 ? 0 : static_cast<double>(i) / sweep.rate + lateness(engine);
    const double along = signal[i];
    const double across = 0.04 * signal[i] + hiss(engine);
    const double up = 9807 + 0.02 * signal[i] + hiss(engine);
    char line[96];
    std::snprintf(line, sizeof line, "%.6f,%.1f,%.1f,%.1f\n", time, recording.alongY ? across : along,
                  recording.alongY ? along : across, up);
    file << line;
  }
  return static_cast<bool>(file.flush());
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fputs("usage: fettle_make_captures FOLDER\n", stderr);
    return 2;
  }
  std::error_code error;
  std::filesystem::create_directories(argv[1], error);
  for (const Recording& recording : recordings) {
    if (!write(recording, argv[1])) {
      std::fprintf(stderr, "%s cannot be written.\n", recording.file);
      return 1;
    }
  }
  if (!fettle::demo::makeLogs(argv[1])) {
    std::fprintf(stderr, "the logs cannot be written to %s.\n", argv[1]);
    return 1;
  }
  return 0;
}
