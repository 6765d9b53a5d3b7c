// usage: bench_resonance CAPTURE.csv [Google Benchmark options]; makes the capture when it is missing.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <filesystem>
#include <fstream>

#include "core/history/evaluation.h"
#include "core/intake/capture_text.h"
#include "core/intake/file_bytes.h"
#include "core/maths/spectrum.h"
#include "core/steps/catalogue.h"
#include "tests/support/made_capture.h"

namespace {

using fettle::Json;

constexpr std::size_t rows = 416000;
constexpr double sampleRate = 3200;
std::string capturePath;   // NOLINT: set once in main, before anything runs
double memoryAtStart = 0;  // NOLINT: the same; MiB

std::vector<fettle::WantedColumn> wanted() {
  return {{"time_s", "time", "s", true, false, {}},
          {"ax", "ax", "mm/s2", true, false, {}},
          {"ay", "ay", "mm/s2", true, false, {}},
          {"az", "az", "mm/s2", true, false, {}}};
}

fettle::Capture readFromFile() {
  const auto bytes = fettle::readFileBytes(capturePath);
  return *fettle::readCapture(*bytes, wanted());
}

double peakMemory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;  // MiB
}

void readCapture(benchmark::State& state) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(readFromFile());
  }
  state.SetBytesProcessed(static_cast<std::int64_t>(std::filesystem::file_size(capturePath)) *
                          state.iterations());
}
BENCHMARK(readCapture)->Unit(benchmark::kMillisecond);

void welchThreeAxes(benchmark::State& state) {
  const fettle::Capture capture = readFromFile();
  const fettle::maths::IndexRange whole{0, capture.rows()};
  for (auto _ : state) {
    for (const char* axis : {"ax", "ay", "az"}) {
      benchmark::DoNotOptimize(
          fettle::maths::welchDensity(capture.column(axis), {&whole, 1}, {sampleRate, 2048, 0.5}));
    }
  }
}
BENCHMARK(welchThreeAxes)->Unit(benchmark::kMillisecond);

Json resonanceInputs() {
  return {{"captures", Json::array({{{"axis", "x"},
                                     {"position", "centre"},
                                     {"direction", "x"},
                                     {"kind", "sweep"},
                                     {"excitation", "constant-velocity"},
                                     {"sweep_from_hz", 5},
                                     {"sweep_to_hz", 120},
                                     {"sweep_s", static_cast<double>(rows) / sampleRate},
                                     {"capture", {{"file", capturePath}}}}})}};
}

fettle::IntakeFiles filesOnDisk() {
  return fettle::IntakeFiles([](const Json& reference) -> tl::expected<std::string, std::string> {
    return *fettle::readFileBytes(reference["file"].get<std::string>());
  });
}

// Its memory counts from the start of the program: run it alone, --benchmark_filter=whole.
void wholeEvaluation(benchmark::State& state) {
  const fettle::Step* step = fettle::findStep("resonance");
  const Json inputs = resonanceInputs();
  std::string proposed;
  for (auto _ : state) {
    fettle::IntakeFiles files = filesOnDisk();
    const auto result = step->evaluate(inputs, {}, files);
    if (!result) {
      state.SkipWithError(result.error().c_str());
      return;
    }
    for (const auto& [id, text, names] : result->texts) {
      proposed = id == "x.proposed" ? text : proposed;
    }
  }
  const double numeric = 4.0 * rows * sizeof(double) / (1024 * 1024);
  state.counters["peak_MiB_over_start"] = peakMemory() - memoryAtStart;
  state.counters["numeric_MiB"] = numeric;
  state.SetLabel(proposed);
}
BENCHMARK(wholeEvaluation)->Unit(benchmark::kMillisecond);

/// After an entry that does not touch the capture, as on the bench.
void evaluationBesideTheCapture(benchmark::State& state) {
  const fettle::Step* step = fettle::findStep("resonance");
  Json inputs = resonanceInputs();
  fettle::IntakeFiles files = filesOnDisk();
  inputs["captures"][0]["capture"]["sha256"] = "the same";
  fettle::StepContext context;
  context.memory = std::make_shared<fettle::WorkMemory>();
  double deviation = 0.1;
  for (auto _ : state) {
    inputs["path_deviation_mm"] = deviation += 1e-4;
    benchmark::DoNotOptimize(step->evaluate(inputs, context, files));
  }
}
BENCHMARK(evaluationBesideTheCapture)->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) {
    return 2;
  }
  capturePath = argv[1];
  if (!std::filesystem::exists(capturePath)) {
    std::ofstream(capturePath) << fettle::tests::madeCapture(rows, sampleRate);
  }
  memoryAtStart = peakMemory();
  --argc;
  ++argv;
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
