#pragma once
#include <Eigen/Core>
#include <optional>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/interval.h"

namespace fettle::maths {

/// y = breakLevel + slope (x - breakPoint), the slope being slopeBefore up to the break point and
/// slopeAfter beyond.
struct BrokenLine {
  double breakLevel = 0;
  double slopeBefore = 0;
  double slopeAfter = 0;
  double breakPoint = 0;
  double residualSumOfSquares = 0;
  double degreesOfFreedom = 0;    ///< n - 4
  std::vector<double> residuals;  ///< observed less fitted, in the order of the points
  /// Of (breakLevel, slopeBefore, slopeAfter, breakPoint) by linearisation at the solution; none without
  /// degrees of freedom or when the points on a side do not determine its line.
  std::optional<Eigen::Matrix4d> covariance;
  /// Profile interval of the break point; none without degrees of freedom.
  std::optional<ProfileInterval> breakPointInterval;

  double at(double x) const;
};

/// Least squares over all break points from the second to the last but one x: the sum of squares can have
/// several minima, so each gap between neighbouring x is solved exactly (Hudson 1966, J. Am. Stat. Assoc.
/// 61, 1097). The interval is the set of break points with (RSS - RSS_min)/(RSS_min/(n - 4)) <= F(1, n - 4)
/// at the given confidence (Seber and Wild 1989, Nonlinear Regression, 9.3.4); of a set in several parts
/// the outer ends are given.
/// Fails on unequal counts, fewer than four points or four different x, or numbers not finite.
Expected<BrokenLine> fitBrokenLine(std::span<const double> x, std::span<const double> y,
                                   double confidence = 0.95);

}  // namespace fettle::maths
