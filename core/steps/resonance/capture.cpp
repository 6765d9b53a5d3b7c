#include "core/steps/resonance/capture.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/step.h"
#include "core/steps/resonance/modes.h"

namespace fettle {
namespace {

constexpr double clippedRows = 0.001;

/// "Captures, row 2: ..."
[[noreturn]] void refuse(const VibrationCapture& row, const std::string& sentence) {
  throw Refusal{say(Text::tr("Captures, row {0}: {1}"), row.number, sentence),
                fmt::format("captures[{}]", row.number)};
}

/// "ay" of "ay" and of "ay_reversed".
std::string columnOf(const std::string& sensor) {
  return sensor.substr(0, 2);
}

void refuseContradictions(const VibrationCapture& row) {
  const std::string direction = row.movesAlong();
  const bool diagonal = direction == "p" || direction == "q";
  if (direction != row.axis && !diagonal) {
    refuse(row, say(Text::tr("axis {0} does not move along {1}; its direction is {0} or a belt diagonal, "
                             "p or q."),
                    row.axis, direction));
  }
  const std::string excitation = row.excitedBy();
  if ((excitation == "tap") != row.isTap() && (excitation == "tap" || excitation == "constant-velocity")) {
    refuse(row, say(Text::tr("a {0} is not excited by {1}; leave the excitation blank or choose one that "
                             "fits the kind."),
                    row.kind, excitation));
  }
  if (row.isSweep() && !(*row.sweepTo > *row.sweepFrom)) {
    refuse(row, say(Text::tr("the sweep ends at {0} Hz and begins at {1} Hz; it must end higher."),
                    formatNumber(*row.sweepTo), formatNumber(*row.sweepFrom)));
  }
  std::set<std::string> used;
  for (const std::string* sensor : {&row.sensorX, &row.sensorY, &row.sensorZ}) {
    if (!used.insert(columnOf(*sensor)).second) {
      refuse(row, say(Text::tr("column {0} cannot point along two axes of the machine; assign each sensor "
                               "axis once."),
                      columnOf(*sensor)));
    }
  }
}

/// The samples of "ax" or "ax_reversed".
std::vector<double> sensorColumn(const VibrationCapture& row, const std::string& sensor) {
  std::vector<double> samples = row.capture->column(columnOf(sensor));
  if (sensor != columnOf(sensor)) {
    std::transform(samples.begin(), samples.end(), samples.begin(), std::negate<>());
  }
  return samples;
}

/// The belt diagonals p and q are the sum and the difference of x and y over the root of two.
MachineSignal diagonal(const std::string& direction, const std::vector<double>& x,
                       const std::vector<double>& y) {
  MachineSignal signal{direction, std::vector<double>(x.size()), {}};
  const double sign = direction == "p" ? 1 : -1;
  for (std::size_t i = 0; i < x.size(); ++i) {
    signal.samples[i] = (x[i] + sign * y[i]) / std::sqrt(2.0);
  }
  return signal;
}

/// The signals along the machine's axes, the fitted one first.
std::vector<MachineSignal> machineSignals(const VibrationCapture& row) {
  std::vector<MachineSignal> signals;
  const std::array<std::pair<const char*, const std::string*>, 3> sensors{
      {{"x", &row.sensorX}, {"y", &row.sensorY}, {"z", &row.sensorZ}}};
  const std::string direction = row.movesAlong();
  const bool isDiagonal = direction == "p" || direction == "q";
  for (const auto& [axis, sensor] : sensors) {
    const std::string column = columnOf(*sensor);
    if (row.capture->has(column)) {
      signals.push_back({axis, sensorColumn(row, *sensor), {}});
    } else if (axis == direction || (isDiagonal && *axis != 'z')) {
      refuse(row, say(Text::tr("the file has no column {0}, which is needed for motion along {1}."), column,
                      direction));
    }
  }
  if (isDiagonal) {
    signals.insert(signals.begin(), diagonal(direction, signals[0].samples, signals[1].samples));
  }
  std::stable_partition(signals.begin(), signals.end(),
                        [&](const MachineSignal& signal) { return signal.axis == direction; });
  return signals;
}

std::vector<std::string> clippedColumns(const Capture& capture) {
  std::vector<std::string> clipped;
  for (const char* key : {"ax", "ay", "az"}) {
    if (capture.has(key) && clippedShare(capture.column(key)) >= clippedRows) {
      clipped.emplace_back(key);
    }
  }
  return clipped;
}

Sampling samplingOf(const VibrationCapture& row) {
  const std::vector<double>& time = row.capture->column("time_s");
  if (time.size() < 3 ||
      std::adjacent_find(time.begin(), time.end(), std::greater_equal<>()) != time.end()) {
    refuse(row, Text::tr("the capture needs three rows or more with rising time."));
  }
  return examineSampling(time);
}

void addDensities(CaptureAnalysis& analysis, const maths::Progress& progress) {
  const auto longest =
      std::max_element(analysis.sampling.stretches.begin(), analysis.sampling.stretches.end(),
                       [](const auto& a, const auto& b) { return a.end - a.begin < b.end - b.begin; });
  if (longest->end - longest->begin < analysis.segments.length) {
    if (analysis.row.isTap()) {
      return;  // the decay does without
    }
    refuse(
        analysis.row,
        say(Text::tr("the longest stretch without a gap has {0} samples; one segment of {1} s takes {2}."),
            longest->end - longest->begin,
            formatPlain(static_cast<double>(analysis.segments.length) / analysis.segments.sampleRate),
            analysis.segments.length));
  }
  const auto count = static_cast<double>(analysis.records.size());
  double done = 0;
  for (MachineSignal& signal : analysis.records) {
    const auto part = [&](double share) { return !progress || progress(0.7 * (done + share) / count); };
    auto density =
        maths::welchDensity(signal.samples, analysis.sampling.stretches, analysis.segments, part);
    if (!density) {
      throw Cancelled{};  // everything else was looked at before
    }
    signal.density = std::move(density->density);
    analysis.frequency = std::move(density->frequency);
    done += 1;
  }
}

/// Segments overlap as far as it takes to fill the columns: a short sweep is drawn as finely as a long one.
void addPicture(CaptureAnalysis& analysis, std::size_t cells, const maths::Progress& progress) {
  constexpr double columnsPerRow = 4.0 / 3.0;
  constexpr double greatestOverlap = 0.97;
  const double columns = std::sqrt(static_cast<double>(cells) * columnsPerRow);
  const std::vector<double>& samples = analysis.fitted().samples;
  maths::SegmentSettings segments = analysis.segments;
  const double step = static_cast<double>(samples.size()) / columns / static_cast<double>(segments.length);
  segments.overlap = std::clamp(1 - step, segments.overlap, greatestOverlap);
  maths::PictureLimits limits;
  limits.columns = static_cast<std::size_t>(columns);
  limits.highestFrequency = 1.3 * *analysis.row.sweepTo;
  const auto part = [&](double share) { return !progress || progress(0.7 + 0.2 * share); };
  auto picture = maths::timeFrequencyPicture(analysis.row.capture->column("time_s"), samples,
                                             analysis.sampling.stretches, segments, limits, part);
  if (!picture) {
    throw Cancelled{};
  }
  analysis.picture = std::move(*picture);
}

}  // namespace

CaptureAnalysis analyseCapture(const VibrationCapture& row, const std::string& name, double segmentTime,
                               std::size_t pictureCells, const maths::Progress& progress) {
  refuseContradictions(row);
  CaptureAnalysis analysis;
  analysis.row = row;
  analysis.label = row.axis + " " + row.position + (row.load.empty() ? "" : ", " + row.load);
  analysis.id = row.axis + "." + name;
  analysis.modes.position = name;
  analysis.sampling = samplingOf(row);
  analysis.clipped = clippedColumns(*row.capture);
  analysis.records = machineSignals(row);
  analysis.segments = {
      analysis.sampling.rate,
      std::max<std::size_t>(8, maths::nearestPowerOfTwo(segmentTime * analysis.sampling.rate)),
      row.isSweep() ? 0.75 : 0.5};
  addDensities(analysis, progress);
  if (row.isSweep()) {
    addPicture(analysis, pictureCells, progress);
  }
  divideDensity(analysis);
  if (analysis.clipped.empty()) {
    row.isTap() ? fitDecay(analysis) : fitCaptureModes(analysis);
  } else {
    analysis.whyNoMode = Text::tr("the sensor was at its limit");
  }
  if (progress && !progress(1)) {
    throw Cancelled{};
  }
  return analysis;
}

}  // namespace fettle
