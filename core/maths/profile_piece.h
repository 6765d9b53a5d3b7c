#pragma once
#include <Eigen/Core>
#include <vector>

#include "core/maths/interval.h"
#include "core/maths/least_squares.h"

namespace fettle::maths {

/// A linear least-squares fit seen as a function of one number theta: theta holds for coefficients beta
/// when (fixed + theta moving) . beta = 0. Fitting under that condition costs
/// RSS(theta) = RSS + (c . beta)^2 / (c . (X^T X)^-1 c) with c = fixed + theta moving (Seber and Lee 2003,
/// Linear Regression Analysis, 3.8), a ratio of quadratics in theta; so where RSS(theta) stays below a
/// limit is known in closed form, as in Fieller's theorem (Fieller 1954, J. R. Stat. Soc. B 16, 175).
class ProfilePiece {
 public:
  ProfilePiece(LeastSquaresFit fit, Eigen::VectorXd fixed, Eigen::VectorXd moving);

  const LeastSquaresFit& fit() const { return m_fit; }
  const Eigen::VectorXd& coefficients() const { return m_fit.coefficients; }
  /// The coefficients under the condition that theta holds.
  Eigen::VectorXd coefficientsAt(double theta) const;
  /// The theta of the free fit; infinite or not a number if it has none.
  double best() const;
  /// All theta with RSS(theta) <= limit: none, one or two intervals, whose ends may be infinite.
  std::vector<Interval> within(double limit) const;

 private:
  LeastSquaresFit m_fit;
  Eigen::VectorXd m_fixed;
  Eigen::VectorXd m_moving;
};

}  // namespace fettle::maths
