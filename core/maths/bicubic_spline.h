#pragma once
#include <Eigen/Core>
#include <span>
#include <vector>

#include "core/maths/cubic_spline.h"
#include "core/maths/expected.h"

namespace fettle::maths {

/// Tensor product of not-a-knot cubic splines through the heights of a rectangular grid
/// (de Boor 1978, A Practical Guide to Splines, chapter XVII). A side of three lines is interpolated by
/// parabolas, of two by lines.
class BicubicSpline {
 public:
  /// x and y strictly rising, z one row per y and one column per x; fails otherwise, with fewer than two
  /// lines either way, and on numbers not finite.
  static Expected<BicubicSpline> through(std::span<const double> x, std::span<const double> y,
                                         const Eigen::MatrixXd& z);

  /// Height at x, y; outside the grid the end polynomials go on.
  double operator()(double x, double y) const;

  /// Heights at all crossings of x and y, one row per y and one column per x; the cheap way to many.
  Eigen::MatrixXd atGrid(std::span<const double> x, std::span<const double> y) const;

 private:
  BicubicSpline(std::span<const double> y, std::vector<CubicSpline> rows);
  /// The spline in y at a given x.
  CubicSpline across(double x) const;

  std::vector<double> m_y;
  std::vector<CubicSpline> m_rows;
};

}  // namespace fettle::maths
