#pragma once
#include <Eigen/Core>
#include <span>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

/// z = a + b u + c v + bowX u^2 + bowY v^2 + twist u v, with u and v running from -1 to 1 over the fitted
/// points in x and in y.
struct QuadraticSurface {
  double a = 0;
  double b = 0;
  double c = 0;
  double bowX = 0;  ///< plus: edges higher than the middle
  double bowY = 0;
  double twist = 0;
  double middleX = 0;
  double middleY = 0;
  double halfRangeX = 1;
  double halfRangeY = 1;
  Eigen::MatrixXd covariance;     ///< 6 by 6, in the order above; zero without degrees of freedom
  std::vector<double> residuals;  ///< observed less surface
  double residualStandardDeviation = 0;
  double rootMeanSquare = 0;    ///< sqrt(RSS/n)
  double degreesOfFreedom = 0;  ///< n - 6

  double at(double x, double y) const;
};

/// Least-squares quadratic surface through six points or more. Fails on unequal counts, too few points,
/// numbers not finite, or points that cannot tell the coefficients apart (all on one conic).
Expected<QuadraticSurface> fitQuadraticSurface(std::span<const double> x, std::span<const double> y,
                                               std::span<const double> z);

}  // namespace fettle::maths
