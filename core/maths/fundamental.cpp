#include "core/maths/fundamental.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/maths/descriptive.h"
#include "core/maths/finite.h"
#include "core/maths/peaks.h"

namespace fettle::maths {
namespace {

constexpr double fewestPeriods = 8;
constexpr int highestOrder = 10;
constexpr int highestSilentFundamental = 4;  ///< the lowest line heard is at most this order
constexpr double overNoise = 14;             ///< dB
constexpr double belowGreatest = 40;         ///< dB
constexpr double sideLobe = 20;              ///< dB
constexpr double sideLobeBins = 4;
constexpr double noiseHalfWidth = 80;  ///< Hz
constexpr double placeBins = 1.5, placeShare = 0.02;
constexpr double silencePenalty = 0.5;
constexpr double rivalMargin = 0.2;

struct Line {
  double frequency = 0, decibels = 0, level = 0;
};

double decibelsOf(double density, double smallest) {
  return 10 * std::log10(std::max(density, smallest));
}

SegmentSettings segmentsOf(std::size_t samples, const PitchSettings& settings) {
  SegmentSettings segments;
  segments.sampleRate = settings.sampleRate;
  segments.length = std::min(nearestPowerOfTwo(settings.segmentTime * settings.sampleRate), samples);
  return segments;
}

/// Mean over the segments less their lower quartile, bin by bin, up to `bins`.
PowerDensity ringingDensity(std::span<const double> samples, const SegmentSettings& settings,
                            const std::vector<std::size_t>& starts, std::size_t bins) {
  SegmentDensity segment(settings);
  std::vector<std::vector<double>> densities;
  for (const std::size_t start : starts) {
    std::vector<double> sum(settings.length / 2 + 1, 0.0);
    segment.addTo(samples.subspan(start, settings.length), sum);
    sum.resize(bins);
    densities.push_back(std::move(sum));
  }
  PowerDensity result;
  result.segments = starts.size();
  result.frequency = segmentFrequencies(settings);
  result.frequency.resize(bins);
  constexpr std::size_t fewestForQuartile = 4;
  std::vector<double> bin(starts.size());
  for (std::size_t k = 0; k < bins; ++k) {
    std::transform(densities.begin(), densities.end(), bin.begin(),
                   [k](const std::vector<double>& density) { return density[k]; });
    const double steady = bin.size() < fewestForQuartile ? 0 : quantile(bin, 0.25);
    result.density.push_back(std::max(mean(bin) - steady, 0.0));
  }
  return result;
}

/// Median of the decibels within noiseHalfWidth of a bin.
double noiseAbout(const std::vector<double>& decibels, std::size_t index, double bin) {
  const auto half = static_cast<std::size_t>(std::max(noiseHalfWidth / bin, 8.0));
  const std::size_t from = index > half ? index - half : 0;
  const std::size_t to = std::min(index + half + 1, decibels.size());
  return median(std::span(decibels).subspan(from, to - from));
}

Line lineAt(const std::vector<double>& decibels, std::size_t index, double bin) {
  const double left = decibels[index - 1], top = decibels[index], right = decibels[index + 1];
  const double curvature = left - 2 * top + right;
  const double shift = curvature < 0 ? std::clamp((left - right) / (2 * curvature), -0.5, 0.5) : 0;
  return {(static_cast<double>(index) + shift) * bin, top, top - noiseAbout(decibels, index, bin)};
}

std::vector<Line> linesOf(const PowerDensity& density, double bin, double lowest) {
  const double greatest = *std::max_element(density.density.begin(), density.density.end());
  std::vector<double> decibels;
  for (const double value : density.density) {
    decibels.push_back(decibelsOf(value, greatest * 1e-12));
  }
  std::vector<Line> all;
  for (const Peak& peak : findPeaks(decibels)) {
    const Line line = lineAt(decibels, peak.index, bin);
    if (line.frequency >= lowest && line.level >= overNoise) {
      all.push_back(line);
    }
  }
  double loudest = -1e300;
  for (const Line& line : all) {
    loudest = std::max(loudest, line.decibels);
  }
  std::vector<Line> kept;
  std::copy_if(all.begin(), all.end(), std::back_inserter(kept), [&](const Line& line) {
    const bool isSideLobe = std::any_of(all.begin(), all.end(), [&](const Line& other) {
      return other.decibels > line.decibels + sideLobe &&
             std::abs(other.frequency - line.frequency) <= sideLobeBins * bin;
    });
    return !isSideLobe && line.decibels >= loudest - belowGreatest;
  });
  return kept;
}

struct Candidate {
  double frequency = 0, score = 0;
  std::vector<Harmonic> harmonics;
};

/// The candidate with the lines it explains; of two lines at one order the louder one counts.
Candidate examined(double frequency, const std::vector<Line>& lines, double bin) {
  Candidate candidate;
  candidate.frequency = frequency;
  double explained = 0, all = 0;
  for (const Line& line : lines) {
    all += line.level;
    const int order = static_cast<int>(std::lround(line.frequency / frequency));
    const double away = std::abs(line.frequency - order * frequency);
    if (order < 1 || order > highestOrder ||
        away > std::max(placeBins * bin, placeShare * line.frequency)) {
      continue;
    }
    auto& found = candidate.harmonics;
    if (!found.empty() && found.back().order == order) {
      if (found.back().level < line.level) {
        explained += line.level - found.back().level;
        found.back() = {order, line.frequency, line.level};
      }
      continue;
    }
    found.push_back({order, line.frequency, line.level});
    explained += line.level;
  }
  if (candidate.harmonics.empty()) {
    return candidate;
  }
  const auto heard = static_cast<double>(candidate.harmonics.size());
  const double orders = candidate.harmonics.back().order;
  candidate.score = explained / all - silencePenalty * (orders - heard) / orders;
  return candidate;
}

std::vector<Candidate> candidatesOf(const std::vector<Line>& lines, const PitchSettings& settings,
                                    double bin) {
  std::vector<Candidate> candidates;
  for (const Line& line : lines) {
    for (int order = 1; order <= highestSilentFundamental; ++order) {
      const double frequency = line.frequency / order;
      if (frequency >= settings.lowest && frequency <= settings.highest) {
        candidates.push_back(examined(frequency, lines, bin));
      }
    }
  }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.score > b.score; });
  return candidates;
}

void refine(Pitch& pitch, double bin) {
  const double line = bin / std::sqrt(12.0);
  pitch.fundamentalHeard = pitch.harmonics.front().order == 1;
  if (pitch.fundamentalHeard) {
    pitch.frequency = pitch.harmonics.front().frequency;
    pitch.u = line;
    return;
  }
  double squares = 0, products = 0;
  for (const Harmonic& harmonic : pitch.harmonics) {
    squares += harmonic.order * harmonic.order;
    products += harmonic.order * harmonic.frequency;
  }
  pitch.frequency = products / squares;
  pitch.u = line / std::sqrt(squares);
}

/// Whether all lines heard stand at multiples of one order above 1: a higher candidate then explains the
/// same lines with fewer silent ones, and this one is none.
bool hasCommonOrder(const Candidate& candidate) {
  int common = 0;
  for (const Harmonic& harmonic : candidate.harmonics) {
    common = std::gcd(common, harmonic.order);
  }
  return common > 1;
}

std::optional<double> rivalOf(const std::vector<Candidate>& candidates, double bin) {
  const Candidate& best = candidates.front();
  for (const Candidate& other : candidates) {
    const bool same =
        std::abs(other.frequency - best.frequency) < std::max(placeBins * bin, placeShare * best.frequency);
    if (!same && !hasCommonOrder(other) && other.score > best.score - rivalMargin) {
      return other.frequency;
    }
  }
  return std::nullopt;
}

Expected<SegmentSettings> checkedSegments(std::span<const double> samples, const PitchSettings& settings) {
  if (!(settings.sampleRate > 0 && settings.lowest > 0 && settings.lowest < settings.highest &&
        settings.segmentTime > 0) ||
      !std::isfinite(settings.sampleRate + settings.highest + settings.segmentTime)) {
    return failure("rate, search range and segment must be above zero, the range from low to high");
  }
  if (2 * settings.highest > settings.sampleRate) {
    return failure("the sampling rate must be at least twice the highest frequency looked for");
  }
  const SegmentSettings segments = segmentsOf(samples.size(), settings);
  if (static_cast<double>(segments.length) * settings.lowest < fewestPeriods * settings.sampleRate) {
    return failure("a segment must hold eight periods of the lowest frequency looked for");
  }
  if (!allFinite(samples)) {
    return failure("the samples hold a value that is no number");
  }
  return segments;
}

}  // namespace

Expected<Pitch> findPitch(std::span<const double> samples, const PitchSettings& settings) {
  const auto segments = checkedSegments(samples, settings);
  if (!segments) {
    return failure(segments.error());
  }
  const IndexRange whole[] = {{0, samples.size()}};
  const auto starts = segmentStarts(samples.size(), whole, *segments);
  if (!starts || starts->empty()) {
    return failure(starts ? "no segment" : starts.error());
  }
  const double bin = settings.sampleRate / static_cast<double>(segments->length);
  const auto upTo = static_cast<std::size_t>(highestOrder * settings.highest / bin) + 2;
  Pitch pitch;
  pitch.density = ringingDensity(samples, *segments, *starts, std::min(segments->length / 2 + 1, upTo));
  if (*std::max_element(pitch.density.density.begin(), pitch.density.density.end()) <= 0) {
    return failure("the recording is silent");
  }
  const auto lines = linesOf(pitch.density, bin, settings.lowest);
  const auto candidates = candidatesOf(lines, settings, bin);
  if (candidates.empty()) {
    return failure("no tone stands out of the noise");
  }
  pitch.harmonics = candidates.front().harmonics;
  pitch.rival = rivalOf(candidates, bin);
  refine(pitch, bin);
  return pitch;
}

}  // namespace fettle::maths
