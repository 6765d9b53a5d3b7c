#pragma once
#include <Eigen/Core>
#include <span>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

/// Interpolating cubic spline whose third derivative does not jump at the second and last but one point
/// (not-a-knot; de Boor 1978, A Practical Guide to Splines, chapter IV). Through three points it is the
/// parabola, through two the line.
class CubicSpline {
 public:
  /// x strictly rising, two points or more; fails otherwise and on numbers not finite.
  static Expected<CubicSpline> through(std::span<const double> x, std::span<const double> y);

  /// Value at x; outside the points the end polynomials go on.
  double operator()(double x) const;

 private:
  CubicSpline(std::span<const double> x, std::span<const double> y, const Eigen::VectorXd& slopes);

  std::vector<double> m_x;
  /// Columns hold the coefficients of 1, t, t^2, t^3 with t from the left end of each piece.
  Eigen::Matrix4Xd m_pieces;
};

}  // namespace fettle::maths
