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
  throw Refusal{say(Text::tr("Captures, row {0}: {1}"), row.number, sentence)};
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
  std::set<char> used;
  for (const std::string* sensor : {&row.sensorX, &row.sensorY, &row.sensorZ}) {
    if (!used.insert(sensor->back()).second) {
      refuse(row, say(Text::tr("column a{0} cannot point along two axes of the machine; assign each sensor "
                               "axis once."),
                      std::string(1, sensor->back())));
    }
  }
}

/// The samples of "ax" or "-ax".
std::vector<double> sensorColumn(const VibrationCapture& row, const std::string& sensor) {
  std::vector<double> samples = row.capture->column(sensor.starts_with('-') ? sensor.substr(1) : sensor);
  if (sensor.starts_with('-')) {
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
    const std::string column = sensor->substr(sensor->size() - 2);
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

void VibrationCapture::describe(FieldList& fields) {
  const std::vector<Choice> sensors{{"ax", Text::tr("sensor x")}, {"-ax", Text::tr("sensor x reversed")},
                                    {"ay", Text::tr("sensor y")}, {"-ay", Text::tr("sensor y reversed")},
                                    {"az", Text::tr("sensor z")}, {"-az", Text::tr("sensor z reversed")}};
  fields
      .choice(
          "axis", axis, Text::tr("Axis"),
          {{"x", "x"}, {"y", "y"}, {"p", Text::tr("belt diagonal p")}, {"q", Text::tr("belt diagonal q")}})
      .required()
      .help(Text::tr("The axis that was shaken; on crossed belts p and q compare the two belts."));
  fields.text("position", position, Text::tr("Position"))
      .required()
      .help(Text::tr("Where the tool head stood, in a word: centre, front left."))
      .alsoNamed({"place"});
  fields
      .choice(
          "direction", direction, Text::tr("Direction"),
          {{"x", "x"}, {"y", "y"}, {"p", Text::tr("belt diagonal p")}, {"q", Text::tr("belt diagonal q")}})
      .help(Text::tr("The way the head moved; blank: along the axis."));
  fields.choice("kind", kind, Text::tr("Kind"),
                {{"sweep", Text::tr("sweep")}, {"tap", Text::tr("tap")}, {"run", Text::tr("run")}});
  fields.text("load", load, Text::tr("Load"))
      .help(Text::tr("What the axis carried, such as a full spool or the heaviest piece."));
  fields
      .choice("excitation", excitation, Text::tr("Excitation"),
              {{"flat", Text::tr("flat")},
               {"constant-velocity", Text::tr("constant velocity")},
               {"tap", Text::tr("tap")},
               {"unknown", Text::tr("unknown")}})
      .help(Text::tr("Constant velocity: the acceleration grows with the frequency, as in most sweeps. "
                     "Blank: constant velocity for a sweep, tap for a tap, unknown for a run."));
  fields.number("sweep_from_hz", sweepFrom, Text::tr("Sweep from"), "Hz")
      .bounds(0, 5000)
      .required()
      .onlyWhen("kind", {"sweep"});
  fields.number("sweep_to_hz", sweepTo, Text::tr("Sweep to"), "Hz")
      .bounds(1, 5000)
      .required()
      .onlyWhen("kind", {"sweep"});
  fields.number("sweep_s", sweepTime, Text::tr("Sweep time"), "s")
      .bounds(0.1, 3600)
      .required()
      .onlyWhen("kind", {"sweep"});
  fields.choice("sensor_x", sensorX, Text::tr("Along machine x"), sensors)
      .help(Text::tr("The sensor's axis that points along plus x of the machine."));
  fields.choice("sensor_y", sensorY, Text::tr("Along machine y"), sensors);
  fields.choice("sensor_z", sensorZ, Text::tr("Along machine z"), sensors);
  fields
      .capture(
          "capture", capture, Text::tr("Capture"),
          [](FieldList& columns) {
            columns.column("time_s", Text::tr("Time"), "s").required().alsoNamed({"time", "t"});
            columns.column("ax", Text::tr("Acceleration x"), "mm/s2").alsoNamed({"x", "accel_x", "lx"});
            columns.column("ay", Text::tr("Acceleration y"), "mm/s2").alsoNamed({"y", "accel_y", "ly"});
            columns.column("az", Text::tr("Acceleration z"), "mm/s2").alsoNamed({"z", "accel_z", "lz"});
          })
      .required();
}

std::string VibrationCapture::excitedBy() const {
  if (!excitation.empty()) {
    return excitation;
  }
  return isSweep() ? "constant-velocity" : isTap() ? "tap" : "unknown";
}

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
