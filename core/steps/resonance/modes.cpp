#include "core/steps/resonance/modes.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/peaks.h"
#include "core/maths/sdof.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double overFloor = 10;
constexpr double lowestOfRun = 5;     // Hz
constexpr double highestOfRun = 200;  // Hz
constexpr std::size_t mostModes = 7;
constexpr std::size_t mostSines = 4;
constexpr double afterBlow = 0.005;  // s
constexpr double decayTime = 1.25;   // s

double segmentTime(const CaptureAnalysis& analysis) {
  return static_cast<double>(analysis.segments.length) / analysis.segments.sampleRate;
}

maths::Interval rangeOf(const CaptureAnalysis& analysis) {
  const double nyquist = 0.5 * analysis.segments.sampleRate;
  const VibrationCapture& row = analysis.row;
  if (!row.isSweep()) {
    return {lowestOfRun, std::min(highestOfRun, 0.8 * nyquist)};
  }
  const double margin = row.sweepRate() * segmentTime(analysis);
  return {*row.sweepFrom + margin, std::min(*row.sweepTo - margin, nyquist)};
}

double floorOf(const CaptureAnalysis& analysis) {
  const std::vector<double>& frequency = analysis.frequency;
  const std::vector<double>& density = analysis.fitted().density;
  auto first = frequency.end();
  if (analysis.row.isSweep()) {
    first = std::upper_bound(frequency.begin(), frequency.end(), 1.3 * *analysis.row.sweepTo);
  }
  if (first == frequency.end()) {
    first = std::lower_bound(frequency.begin(), frequency.end(), 0.8 * frequency.back());
  }
  return maths::median(std::span(density).subspan(static_cast<std::size_t>(first - frequency.begin())));
}

/// Peaks to start from, the highest first. Their bins are counted within the range.
std::vector<maths::ModeStart> startsIn(const CaptureAnalysis& analysis) {
  const auto& frequency = analysis.frequency;
  const auto begin = static_cast<std::size_t>(
      std::lower_bound(frequency.begin(), frequency.end(), analysis.range.low) - frequency.begin());
  const auto end = static_cast<std::size_t>(
      std::upper_bound(frequency.begin(), frequency.end(), analysis.range.high) - frequency.begin());
  const auto inRange = [&](const std::vector<double>& values) {
    return std::span(values).subspan(begin, end - begin);
  };
  const std::span<const double> divided = inRange(analysis.divided);
  const std::span<const double> density = inRange(analysis.fitted().density);
  auto peaks = maths::findPeaks(divided);
  std::erase_if(peaks, [&](const maths::Peak& peak) {
    return peak.prominence < 0.5 * peak.height || density[peak.index] < overFloor * analysis.floor;
  });
  std::stable_sort(peaks.begin(), peaks.end(),
                   [](const maths::Peak& a, const maths::Peak& b) { return a.height > b.height; });
  peaks.resize(std::min(peaks.size(), mostModes));
  std::vector<maths::ModeStart> starts;
  for (const auto& peak : peaks) {
    constexpr double ordinary = 0.05;
    const double damping =
        maths::halfPowerDamping(inRange(frequency), divided, peak.index).value_or(ordinary);
    starts.push_back({inRange(frequency)[peak.index], std::clamp(damping, 0.005, 0.3)});
  }
  return starts;
}

void takeModes(CaptureAnalysis& analysis, const maths::ModalFit& fit) {
  for (std::size_t k = 0; k < fit.model.modes.size(); ++k) {
    const maths::Mode& mode = fit.model.modes[k];
    const maths::Mode& error = fit.standardErrors.modes[k];
    analysis.modes.modes.push_back({mode.frequency, mode.damping, mode.coefficient, error.frequency,
                                    error.damping, error.coefficient});
  }
  analysis.modes.dof = fit.degreesOfFreedom;
  analysis.modes.sortByWeight();
}

/// The signal after its greatest sample, the blow.
Decay decayOf(const CaptureAnalysis& analysis) {
  const std::vector<double>& samples = analysis.fitted().samples;
  const std::vector<double>& time = analysis.row.capture->column("time_s");
  const double rest = maths::median(samples);
  const auto blow = static_cast<std::size_t>(
      std::max_element(samples.begin(), samples.end(),
                       [&](double a, double b) { return std::abs(a - rest) < std::abs(b - rest); }) -
      samples.begin());
  const auto stretch = std::find_if(analysis.sampling.stretches.begin(), analysis.sampling.stretches.end(),
                                    [&](const maths::IndexRange& range) { return blow < range.end; });
  Decay decay;
  for (std::size_t i = blow; i < stretch->end && time[i] <= time[blow] + afterBlow + decayTime; ++i) {
    if (time[i] >= time[blow] + afterBlow) {
      decay.time.push_back(time[i] - time[blow]);
      decay.samples.push_back(samples[i]);
    }
  }
  return decay;
}

}  // namespace

void divideDensity(CaptureAnalysis& analysis) {
  analysis.range = rangeOf(analysis);
  analysis.byFrequencySquared = analysis.row.excitedBy() == "constant-velocity";
  if (analysis.frequency.empty()) {
    return;
  }
  analysis.floor = floorOf(analysis);
  for (std::size_t k = 0; k < analysis.frequency.size(); ++k) {
    const double f = analysis.frequency[k];
    const double above = std::max(0.0, analysis.fitted().density[k] - analysis.floor);
    analysis.divided.push_back(!analysis.byFrequencySquared ? above : k == 0 ? 0.0 : above / (f * f));
  }
}

void fitCaptureModes(CaptureAnalysis& analysis) {
  if (!(analysis.range.low < analysis.range.high)) {
    analysis.whyNoMode = say(Text::tr("the sweep is so short that segments of {0} s leave nothing of it"),
                             formatPlain(segmentTime(analysis)));
    return;
  }
  const auto starts = startsIn(analysis);
  if (starts.empty()) {
    analysis.whyNoMode = Text::tr("no peak stands out of the density and ten times over its floor");
    return;
  }
  auto fit = maths::fitDeterminedModes(analysis.frequency, analysis.divided, analysis.range, starts);
  if (!fit) {
    analysis.whyNoMode = fit.error();
    return;
  }
  if (fit->model.modes.empty()) {
    analysis.whyNoMode = Text::tr("the density does not determine any mode well enough");
    return;
  }
  analysis.model = fit->model;
  takeModes(analysis, *fit);
}

void fitDecay(CaptureAnalysis& analysis) {
  Decay decay = decayOf(analysis);
  const auto starts = maths::dampedSineStarts(decay.samples, analysis.sampling.rate, mostSines);
  if (starts.empty()) {
    analysis.whyNoMode = Text::tr("nothing rings after the blow");
    return;
  }
  auto fit = maths::fitDeterminedDampedSines(decay.time, decay.samples, starts);
  if (!fit || fit->sines.empty()) {
    analysis.whyNoMode = fit ? Text::tr("the decay does not determine any mode well enough") : fit.error();
    return;
  }
  double sum = 0;
  for (const auto& sine : fit->sines) {
    sum += sine.amplitude;
  }
  for (std::size_t k = 0; k < fit->sines.size(); ++k) {
    const maths::DampedSine& sine = fit->sines[k];
    const maths::DampedSine& error = fit->standardErrors[k];
    analysis.modes.modes.push_back({sine.frequency, sine.damping, sine.amplitude / sum, error.frequency,
                                    error.damping, error.amplitude / sum});
  }
  analysis.modes.dof = fit->degreesOfFreedom;
  analysis.modes.sortByWeight();
  decay.fit = std::move(*fit);
  analysis.decay = std::move(decay);
}

}  // namespace fettle
