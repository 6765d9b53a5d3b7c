#include "core/steps/belt_tension/readings.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/result_name.h"

namespace fettle {
namespace {

std::string pathOf(const BeltRecording& recording) {
  return fmt::format("recordings[{}]", recording.number);
}

/// Samples a second of evenly spaced times.
double rateOf(const BeltRecording& recording) {
  const auto& time = recording.sound->column("time_s");
  const double span = time.back() - time.front();
  const double rate = static_cast<double>(time.size() - 1) / span;
  for (std::size_t i = 0; i < time.size(); ++i) {
    const double even = time.front() + static_cast<double>(i) / rate;
    if (std::abs(time[i] - even) > 0.5 / rate) {
      throw Refusal{say(Text::tr("Recordings, row {0}: the samples are not evenly spaced about {1} s; a "
                                 "recording of one steady rate is needed."),
                        recording.number, formatFixed(time[i], 4)),
                    pathOf(recording)};
    }
  }
  return rate;
}

maths::PitchSettings searchOf(const BeltRecording& recording, double from, double to) {
  maths::PitchSettings search;
  search.sampleRate = rateOf(recording);
  search.lowest = from;
  search.highest = to;
  const double seconds = static_cast<double>(recording.sound->rows()) / search.sampleRate;
  if (2 * to > search.sampleRate) {
    throw Refusal{
        say(Text::tr("Recordings, row {0}: {1} samples a second do not reach {2} Hz; record at {3} "
                     "or more, or search lower."),
            recording.number, formatFixed(search.sampleRate, 0), formatNumber(to), formatNumber(2 * to)),
        pathOf(recording)};
  }
  constexpr double periods = 8;
  if (seconds * from < periods) {
    throw Refusal{
        say(Text::tr("Recordings, row {0}: {1} s hold fewer than {2} periods of {3} Hz; record for "
                     "{4} s or more, or search from a higher frequency."),
            recording.number, formatFixed(seconds, 2), formatNumber(periods), formatNumber(from),
            formatFixed(periods / from, 2)),
        pathOf(recording)};
  }
  // Long enough for the lowest frequency, even when taken down to a power of two.
  search.segmentTime = std::max(search.segmentTime, 1.5 * periods / from);
  return search;
}

void noteDoubt(StepResult& result, const BeltRecording& recording, const maths::Pitch& pitch) {
  if (pitch.rival) {
    result.addFinding(
        "pitch-unclear", Severity::caution,
        say(Text::tr("Recordings, row {0}: {1} Hz is taken for the fundamental of {2}, but {3} Hz would "
                     "explain the lines almost as well. Look at the spectrum and pluck again."),
            recording.number, formatFixed(pitch.frequency, 1), recording.belt,
            formatFixed(*pitch.rival, 1)));
  }
  if (!pitch.fundamentalHeard) {
    result.addFinding(
        "fundamental-silent", Severity::note,
        say(Text::tr("Recordings, row {0}: the fundamental of {1}, {2} Hz, is not heard itself; it "
                     "follows from {3} harmonics."),
            recording.number, recording.belt, formatFixed(pitch.frequency, 1), pitch.harmonics.size()));
  }
}

BeltReadings& beltNamed(std::vector<BeltReadings>& belts, const std::string& name,
                        const std::optional<double>& length, std::string at) {
  const std::string id = resultName(name);
  auto found = std::find_if(belts.begin(), belts.end(), [&](const BeltReadings& b) { return b.id == id; });
  if (found == belts.end()) {
    BeltReadings belt;
    belt.id = id;
    belt.name = name;
    found = belts.insert(belts.end(), std::move(belt));
  }
  if (length && found->length && *length != *found->length) {
    found->refused =
        Refusal{say(Text::tr("Belt {0} has the spans {1} mm and {2} mm; one belt needs one span."), name,
                    formatNumber(*found->length), formatNumber(*length)),
                std::move(at)};
  }
  found->length = length ? length : found->length;
  return *found;
}

void add(BeltReadings& belt, double frequency, double u, std::size_t row) {
  belt.frequencies.push_back(frequency);
  belt.u.push_back(u);
  belt.rows.push_back(row);
}

}  // namespace

std::vector<HeardPitch> heardPitches(StepResult& result, const std::vector<BeltRecording>& recordings,
                                     double from, double to) {
  std::vector<HeardPitch> heard;
  for (const auto& recording : included(recordings)) {
    maths::PitchSettings search;
    if (!result.attempt({}, [&] { search = searchOf(recording, from, to); })) {
      continue;
    }
    const auto pitch = maths::findPitch(recording.sound->column("level"), search);
    if (pitch) {
      noteDoubt(result, recording, *pitch);
      heard.push_back({recording.number, recording.belt, *pitch});
    } else {
      result.addFinding(
          "no-tone", Severity::caution,
          say(Text::tr("Recordings, row {0}: {1} between {2} and {3} Hz. Pluck harder, nearer to the "
                       "microphone, in a quiet room."),
              recording.number, pitch.error(), formatNumber(from), formatNumber(to)));
    }
  }
  return heard;
}

std::vector<BeltReadings> beltsOf(const std::vector<Pluck>& plucks,
                                  const std::vector<BeltRecording>& recordings,
                                  const std::vector<HeardPitch>& heard, const Instrument& reading) {
  std::vector<BeltReadings> belts;
  for (const auto& pluck : included(plucks)) {
    BeltReadings& belt =
        beltNamed(belts, pluck.belt, pluck.length, fmt::format("plucks[{}].length_mm", pluck.number));
    add(belt, *pluck.frequency, reading.r / std::sqrt(12.0), pluck.number);
    ++belt.typed;
  }
  for (const auto& recording : included(recordings)) {
    BeltReadings& belt =
        beltNamed(belts, recording.belt, recording.length, pathOf(recording) + ".length_mm");
    for (const auto& found : heard) {
      if (found.row == recording.number) {
        add(belt, found.pitch.frequency, found.pitch.u, found.row);
      }
    }
  }
  return belts;
}

Quantity frequencyOf(const BeltReadings& belt, const Instrument& reading) {
  const auto n = static_cast<double>(belt.frequencies.size());
  double squares = 0;
  for (const double u : belt.u) {
    squares += u * u;
  }
  const double mean = maths::mean(belt.frequencies);
  const double typed = static_cast<double>(belt.typed) / n;
  std::vector<Contribution> parts{{std::sqrt(squares) / n},
                                  {typed * reading.limitOfError(mean) / std::sqrt(3.0)}};
  if (belt.frequencies.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(belt.frequencies) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(mean, "Hz", parts);
}

}  // namespace fettle
