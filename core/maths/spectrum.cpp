#include "core/maths/spectrum.h"

#include <cmath>
#include <numbers>
#include <numeric>
#include <string>

#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

constexpr std::size_t segmentsPerReport = 64;

std::size_t segmentStep(const SegmentSettings& settings) {
  const auto shared = static_cast<std::size_t>(settings.overlap * static_cast<double>(settings.length));
  return settings.length - shared;
}

}  // namespace

std::vector<double> hannWindow(std::size_t length) {
  std::vector<double> window(length);
  for (std::size_t j = 0; j < length; ++j) {
    const double phase = 2.0 * std::numbers::pi * static_cast<double>(j) / static_cast<double>(length);
    window[j] = 0.5 - 0.5 * std::cos(phase);
  }
  return window;
}

std::size_t nearestPowerOfTwo(double count) {
  std::size_t power = 1;
  while (1.5 * static_cast<double>(power) < count) {
    power *= 2;
  }
  return power;
}

std::vector<double> segmentFrequencies(const SegmentSettings& settings) {
  std::vector<double> frequencies(settings.length / 2 + 1);
  for (std::size_t k = 0; k < frequencies.size(); ++k) {
    frequencies[k] = static_cast<double>(k) * settings.sampleRate / static_cast<double>(settings.length);
  }
  return frequencies;
}

Expected<std::vector<std::size_t>> segmentStarts(std::size_t samples, std::span<const IndexRange> stretches,
                                                 const SegmentSettings& settings) {
  if (!std::isfinite(settings.sampleRate) || settings.sampleRate <= 0.0) {
    return failure("the sampling rate must be above 0 Hz");
  }
  if (settings.length < 2 || !(settings.overlap >= 0.0 && settings.overlap < 1.0)) {
    return failure("a segment needs at least 2 samples and an overlap from 0 to below 1");
  }
  std::vector<std::size_t> starts;
  const std::size_t step = segmentStep(settings);
  for (const IndexRange& stretch : stretches) {
    if (stretch.begin > stretch.end || stretch.end > samples) {
      return failure("a stretch lies outside the samples");
    }
    for (std::size_t start = stretch.begin; start + settings.length <= stretch.end; start += step) {
      starts.push_back(start);
    }
  }
  return starts;
}

SegmentDensity::SegmentDensity(const SegmentSettings& settings)
    : m_window(hannWindow(settings.length)),
      m_fourier(settings.length),
      m_scale(1.0 / (settings.sampleRate *
                     std::inner_product(m_window.begin(), m_window.end(), m_window.begin(), 0.0))) {}

void SegmentDensity::addTo(std::span<const double> segment, std::span<double> sum) {
  const std::size_t length = m_window.size();
  const double mean = std::accumulate(segment.begin(), segment.end(), 0.0) / static_cast<double>(length);
  const std::span<double> input = m_fourier.input();
  for (std::size_t j = 0; j < length; ++j) {
    input[j] = (segment[j] - mean) * m_window[j];
  }
  const auto spectrum = m_fourier.transform();
  sum[0] += m_scale * std::norm(spectrum[0]);
  for (std::size_t k = 1; k < spectrum.size(); ++k) {
    sum[k] += 2.0 * m_scale * std::norm(spectrum[k]);
  }
  if (length % 2 == 0) {
    sum[length / 2] -= m_scale * std::norm(spectrum[length / 2]);
  }
}

Expected<PowerDensity> welchDensity(std::span<const double> samples, std::span<const IndexRange> stretches,
                                    const SegmentSettings& settings, const Progress& progress) {
  const auto starts = segmentStarts(samples.size(), stretches, settings);
  if (!starts) {
    return failure(starts.error());
  }
  if (starts->empty()) {
    return failure("no stretch without a gap is as long as one segment of " +
                   std::to_string(settings.length) + " samples");
  }
  SegmentDensity segment(settings);
  PowerDensity result{segmentFrequencies(settings), std::vector<double>(settings.length / 2 + 1, 0.0),
                      starts->size()};
  const auto count = static_cast<double>(starts->size());
  for (std::size_t i = 0; i < starts->size(); ++i) {
    if (progress && i % segmentsPerReport == 0 && !progress(static_cast<double>(i) / count)) {
      return failure(cancelled);
    }
    segment.addTo(samples.subspan((*starts)[i], settings.length), result.density);
  }
  for (double& value : result.density) {
    value /= count;
  }
  if (!allFinite(result.density)) {
    return failure("the samples hold a value that is no number");
  }
  return result;
}

}  // namespace fettle::maths
