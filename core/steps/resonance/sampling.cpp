#include "core/steps/resonance/sampling.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace fettle {
namespace {

constexpr double gapOfMedian = 1.5;
constexpr std::size_t shortestRun = 3;

double medianOf(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) {
    return *middle;
  }
  return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

}  // namespace

Sampling examineSampling(std::span<const double> time) {
  if (time.size() < 3) {
    throw std::invalid_argument("the sampling of fewer than three rows cannot be examined");
  }
  std::vector<double> intervals(time.size() - 1);
  for (std::size_t i = 0; i < intervals.size(); ++i) {
    intervals[i] = time[i + 1] - time[i];
  }
  if (!(*std::min_element(intervals.begin(), intervals.end()) > 0)) {
    throw std::invalid_argument("time does not rise from row to row");
  }
  Sampling sampling;
  sampling.medianInterval = medianOf(intervals);
  sampling.duration = time.back() - time.front();
  const double longest = gapOfMedian * sampling.medianInterval;
  std::size_t begin = 0;
  double sum = 0;
  double squares = 0;  // about the median, so that nothing cancels
  for (std::size_t i = 0; i < intervals.size(); ++i) {
    if (intervals[i] > longest) {
      sampling.gaps.push_back({time[i], intervals[i]});
      sampling.stretches.push_back({begin, i + 1});
      begin = i + 1;
      continue;
    }
    const double deviation = intervals[i] - sampling.medianInterval;
    sum += deviation;
    squares += deviation * deviation;
  }
  sampling.stretches.push_back({begin, time.size()});
  const auto count = static_cast<double>(intervals.size() - sampling.gaps.size());
  const double mean = sum / count;
  sampling.rate = 1.0 / (sampling.medianInterval + mean);
  if (count > 1) {
    const double variance = std::max(0.0, (squares - count * mean * mean) / (count - 1));
    sampling.jitter = std::sqrt(variance) / sampling.medianInterval;
  }
  return sampling;
}

double clippedShare(std::span<const double> samples) {
  if (samples.empty()) {
    return 0;
  }
  const auto [lowest, highest] = std::minmax_element(samples.begin(), samples.end());
  if (*lowest == *highest) {
    return 0;
  }
  std::size_t rows = 0;
  for (std::size_t i = 0; i < samples.size();) {
    std::size_t end = i + 1;
    if (samples[i] == *lowest || samples[i] == *highest) {
      while (end < samples.size() && samples[end] == samples[i]) {
        ++end;
      }
      rows += end - i >= shortestRun ? end - i : 0;
    }
    i = end;
  }
  return static_cast<double>(rows) / static_cast<double>(samples.size());
}

}  // namespace fettle
