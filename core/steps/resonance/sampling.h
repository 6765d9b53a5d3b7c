#pragma once
#include <span>
#include <vector>

#include "core/maths/spectrum.h"

namespace fettle {

/// Samples missing between two that were kept.
struct SamplingGap {
  double at = 0;      ///< s, time of the last sample before
  double length = 0;  ///< s, from that sample to the next
};

/// How evenly the rows of a capture follow each other. An interval over 1.5 × the median is a gap.
struct Sampling {
  double rate = 0;            ///< Hz, intervals that are no gap / their summed time
  double medianInterval = 0;  ///< s
  double jitter = 0;          ///< s(Δt) of the intervals that are no gap, as a share of the median
  double duration = 0;        ///< s, from the first sample to the last
  std::vector<SamplingGap> gaps;
  std::vector<maths::IndexRange> stretches;  ///< the rows between gaps
};

/// `time` in s, three rows or more, rising; throws std::invalid_argument otherwise.
Sampling examineSampling(std::span<const double> time);

/// Share of the rows that stand in runs of three or more equal samples at the column's maximum or minimum:
/// what a sensor at its limit leaves behind. 0 for a constant column.
double clippedShare(std::span<const double> samples);

}  // namespace fettle
