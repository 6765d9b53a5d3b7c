#pragma once
#include <Eigen/Core>
#include <optional>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/interval.h"

namespace fettle::maths {

/// y = plateau for x <= hinge, plateau - slope (x - hinge) beyond.
struct Hinge {
  double plateau = 0;
  double slope = 0;  ///< fall of y per unit of x, above zero
  double hinge = 0;
  double residualSumOfSquares = 0;
  double degreesOfFreedom = 0;    ///< n - 3
  std::vector<double> residuals;  ///< observed less fitted, in the order of the points
  /// Of (plateau, slope, hinge) by linearisation at the solution; none without degrees of freedom or with
  /// points beyond the hinge at one x only.
  std::optional<Eigen::Matrix3d> covariance;
  /// Profile interval of the hinge; none without degrees of freedom.
  std::optional<ProfileInterval> hingeInterval;
  /// The x where y has fallen by fallFraction of the plateau: hinge + fallFraction plateau/slope. It may
  /// lie beyond the points. None when the plateau is not above zero.
  std::optional<double> fallPoint;
  /// Profile interval of the fall point itself; none without degrees of freedom or fall point.
  std::optional<ProfileInterval> fallPointInterval;

  double at(double x) const;
};

struct HingeOptions {
  double confidence = 0.95;
  double fallFraction = 0.05;
};

/// Least squares over all hinges from the first to the last but one x with a falling line: the sum of
/// squares can have several minima, so each gap between neighbouring x is solved exactly (Hudson 1966,
/// J. Am. Stat. Assoc. 61, 1097). Intervals are the sets of values with
/// (RSS - RSS_min)/(RSS_min/(n - 3)) <= F(1, n - 3), all other parameters set to their best and the slope
/// not below zero (Seber and Wild 1989, Nonlinear Regression, 9.3.4); of a set in several parts the outer
/// ends are given, cut to the range of x.
/// Fails on unequal counts, fewer than three different x, numbers not finite, or when y does not fall.
Expected<Hinge> fitHinge(std::span<const double> x, std::span<const double> y,
                         const HingeOptions& options = {});

}  // namespace fettle::maths
