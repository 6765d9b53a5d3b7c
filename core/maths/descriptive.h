#pragma once
#include <optional>
#include <span>

namespace fettle::maths {

// All functions throw std::invalid_argument when given fewer values than they name: that is a bug of the
// caller, who counts readings first.

/// Arithmetic mean of one value or more; the sum is corrected by a second pass over the deviations
/// (Chan, Golub and LeVeque 1983, The American Statistician 37, 242).
double mean(std::span<const double> values);

/// Standard deviation with divisor n - 1 of two values or more, two-pass with correction
/// (Chan, Golub and LeVeque 1983, eq. 1.7).
double sampleStandardDeviation(std::span<const double> values);

/// Median of one value or more; the mean of the middle two when their number is even.
double median(std::span<const double> values);

/// Median absolute deviation from the median times 1.4826 (= 1/Phi^-1(3/4)), so that it estimates the
/// standard deviation of normal data (Hampel 1974, J. Am. Stat. Assoc. 69, 383). One value or more.
double scaledMedianAbsoluteDeviation(std::span<const double> values);

/// Quantile for 0 <= probability <= 1 of one value or more, linear between order statistics
/// (definition 7 of Hyndman and Fan 1996, The American Statistician 50, 361).
double quantile(std::span<const double> values, double probability);

/// Lag-1 autocorrelation r1 = sum (y_i - m)(y_{i+1} - m) / sum (y_i - m)^2 (NIST StRD, univariate sets).
/// Two values or more; nothing when all values are equal.
std::optional<double> lag1Autocorrelation(std::span<const double> values);

}  // namespace fettle::maths
