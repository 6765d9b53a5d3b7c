#pragma once
#include <Eigen/Core>
#include <span>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

/// z = a + b x + c y.
struct Plane {
  double a = 0;
  double b = 0;
  double c = 0;

  double at(double x, double y) const { return a + b * x + c * y; }
};

struct PlaneFit {
  Plane plane;
  Eigen::Matrix3d covariance = Eigen::Matrix3d::Zero();  ///< of (a, b, c); zero without degrees of freedom
  std::vector<double> residuals;                         ///< vertical, observed less plane
  double residualStandardDeviation = 0;  ///< sqrt(RSS/(n - 3)); 0 without degrees of freedom
  double degreesOfFreedom = 0;           ///< n - 3
  double rootMeanSquare = 0;             ///< sqrt(RSS/n)
  double peakToValley = 0;               ///< largest less smallest residual

  /// Standard error of the plane at x, y.
  double standardErrorAt(double x, double y) const;
};

/// Least-squares plane of vertical distances through three points or more (ISO 12781-1, least squares
/// reference plane, with distances taken along z). Fails on unequal counts, fewer than three points,
/// numbers not finite, or points on one line.
Expected<PlaneFit> fitPlane(std::span<const double> x, std::span<const double> y,
                            std::span<const double> z);

}  // namespace fettle::maths
