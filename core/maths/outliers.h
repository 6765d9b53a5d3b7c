#pragma once
#include <cstddef>
#include <span>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

// These functions mark readings by their index; none drops or changes one. NaN is not allowed.

/// Modified z-scores (x_i - median)/S with S = scaled median absolute deviation, not below smallestScale
/// (Iglewicz and Hoaglin 1993, How to Detect and Handle Outliers, ASQC vol. 16; there written
/// 0.6745 (x_i - median)/MAD). A score over 3.5 in size marks an outlier.
/// Fails when there is no value, or S is zero: at least half the values are equal and no smallest scale
/// was given.
Expected<std::vector<double>> modifiedZScores(std::span<const double> values, double smallestScale);

/// Critical value of Grubbs' two-sided statistic for n values, n >= 3
/// (Grubbs 1969, Technometrics 11, 1; NIST/SEMATECH e-Handbook 1.3.5.17.1). Throws std::invalid_argument
/// for n < 3 or alpha outside (0, 1).
double grubbsCriticalValue(std::size_t count, double alpha = 0.05);

struct GrubbsTest {
  double statistic;   ///< largest |x_i - mean|/s; 0 when all values are equal
  double critical;    ///< two-sided critical value at 0.05
  std::size_t index;  ///< the reading farthest from the mean
  bool outlier;       ///< statistic > critical
};

/// Grubbs' two-sided test at 0.05 for one outlier among n >= 3 normal values; fails for fewer.
/// @param fromResolution standard deviation r/sqrt(12) that reading to a resolution r gives by itself. It
/// is added to s in squares, as in the uncertainty of a mean: s alone is too small where rounding made
/// readings equal, and two equal readings of three always reach the greatest statistic there is, 1.155,
/// above the critical 1.154, however near the third lies. With it one step of the resolution marks nothing
/// up to n = 30. Zero gives the test as published.
Expected<GrubbsTest> grubbsTest(std::span<const double> values, double fromResolution = 0);

/// Indices, rising, of readings marked by either rule: modified z-score over 3.5 with r/sqrt(12) as the
/// smallest scale, or Grubbs for 3 to 30 readings. Fewer than three readings mark nothing.
std::vector<std::size_t> outlierIndices(std::span<const double> values, double fromResolution);

}  // namespace fettle::maths
