#pragma once
#include <Eigen/Core>
#include <cstddef>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/spectrum.h"

namespace fettle::maths {

/// Density over time and frequency.
struct TimeFrequencyPicture {
  std::vector<double> time;       ///< s, middle of each column
  std::vector<double> frequency;  ///< Hz
  Eigen::MatrixXd density;        ///< frequencies × times, squared unit of the samples per Hz
};

/// What is worth drawing.
struct PictureLimits {
  std::size_t columns = 400;        ///< at least 1; a stretch always keeps one column
  double highestFrequency = 1e300;  ///< Hz
};

/// One-sided density of each segment (as SegmentDensity) beside its middle time. When there are more
/// segments than `limits.columns`, as many neighbours of one stretch as needed are averaged into one
/// column, so that power is kept and nothing is averaged over a gap. `time` holds the time of every sample,
/// s. Errors: as welchDensity; `time` and `samples` differ in length.
Expected<TimeFrequencyPicture> timeFrequencyPicture(
    std::span<const double> time, std::span<const double> samples, std::span<const IndexRange> stretches,
    const SegmentSettings& settings, const PictureLimits& limits = {}, const Progress& progress = {});

}  // namespace fettle::maths
