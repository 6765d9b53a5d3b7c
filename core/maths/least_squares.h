#pragma once
#include <Eigen/Core>

#include "core/maths/expected.h"

namespace fettle::maths {

/// A linear least-squares fit of n values by p coefficients.
struct LeastSquaresFit {
  Eigen::VectorXd coefficients;        ///< p
  Eigen::MatrixXd unscaledCovariance;  ///< (X^T X)^-1, p by p
  Eigen::VectorXd residuals;           ///< observed less fitted, n
  double residualSumOfSquares = 0;
  double degreesOfFreedom = 0;  ///< n - p; 0: nothing is known of the scatter

  /// sqrt(RSS/(n - p)); 0 without degrees of freedom.
  double residualStandardDeviation() const;
  /// Residual variance times the unscaled covariance; all zero without degrees of freedom.
  Eigen::MatrixXd covariance() const;
  /// Square roots of the diagonal of the covariance.
  Eigen::VectorXd standardErrors() const;
};

/// Columns whose part not explained by the others falls below this fraction of the largest are dependent.
inline constexpr double defaultRankTolerance = 1e-13;

/// Least squares for design (n by p) and observations (n) by column-pivoting Householder QR of the design
/// with its columns scaled to unit length (Golub and Van Loan 2013, Matrix Computations, 5.3.3 and 5.4.2;
/// scaling after van der Sluis 1969). Fails when n < p, p = 0, sizes differ, a number is not finite, or
/// the columns are dependent within rankTolerance.
Expected<LeastSquaresFit> fitLeastSquares(const Eigen::MatrixXd& design,
                                          const Eigen::VectorXd& observations,
                                          double rankTolerance = defaultRankTolerance);

/// (X^T X)^-1 of a design by the same factorisation; fails on dependent columns.
Expected<Eigen::MatrixXd> unscaledCovariance(const Eigen::MatrixXd& design,
                                             double rankTolerance = defaultRankTolerance);

}  // namespace fettle::maths
