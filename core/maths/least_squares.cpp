#include "core/maths/least_squares.h"

#include <Eigen/QR>
#include <cmath>

namespace fettle::maths {
namespace {

/// The design's QR factors with unit columns; column j was divided by lengths[j].
struct ScaledFactors {
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr;
  Eigen::VectorXd lengths;
};

Expected<ScaledFactors> factorise(const Eigen::MatrixXd& design, double rankTolerance) {
  if (design.cols() == 0 || design.rows() < design.cols()) {
    return failure("there are fewer points than coefficients");
  }
  if (!design.allFinite()) {
    return failure("the fit got a value that is not a finite number");
  }
  ScaledFactors factors;
  factors.lengths = design.colwise().stableNorm();
  if ((factors.lengths.array() == 0).any()) {
    return failure("a coefficient has no effect on any point, so it cannot be found");
  }
  factors.qr.setThreshold(rankTolerance);
  factors.qr.compute(design * factors.lengths.cwiseInverse().asDiagonal());
  if (factors.qr.rank() < design.cols()) {
    return failure("the points cannot tell the coefficients apart");
  }
  return factors;
}

Eigen::MatrixXd invertNormalMatrix(const ScaledFactors& factors) {
  const Eigen::Index count = factors.lengths.size();
  const Eigen::MatrixXd inverse = factors.qr.matrixR()
                                      .topLeftCorner(count, count)
                                      .triangularView<Eigen::Upper>()
                                      .solve(Eigen::MatrixXd::Identity(count, count));
  const Eigen::MatrixXd rows =
      factors.lengths.cwiseInverse().asDiagonal() * (factors.qr.colsPermutation() * inverse);
  return rows * rows.transpose();
}

}  // namespace

double LeastSquaresFit::residualStandardDeviation() const {
  return degreesOfFreedom > 0 ? std::sqrt(residualSumOfSquares / degreesOfFreedom) : 0;
}

Eigen::MatrixXd LeastSquaresFit::covariance() const {
  const double s = residualStandardDeviation();
  return s * s * unscaledCovariance;
}

Eigen::VectorXd LeastSquaresFit::standardErrors() const {
  return residualStandardDeviation() * unscaledCovariance.diagonal().cwiseSqrt();
}

Expected<LeastSquaresFit> fitLeastSquares(const Eigen::MatrixXd& design,
                                          const Eigen::VectorXd& observations, double rankTolerance) {
  if (design.rows() != observations.size()) {
    return failure("the fit got unequal numbers of points and values");
  }
  if (!observations.allFinite()) {
    return failure("the fit got a value that is not a finite number");
  }
  const auto factors = factorise(design, rankTolerance);
  if (!factors) {
    return failure(factors.error());
  }
  LeastSquaresFit fit;
  fit.coefficients = factors->qr.solve(observations).cwiseQuotient(factors->lengths);
  fit.unscaledCovariance = invertNormalMatrix(*factors);
  fit.residuals = observations - design * fit.coefficients;
  fit.residualSumOfSquares = fit.residuals.squaredNorm();
  fit.degreesOfFreedom = static_cast<double>(design.rows() - design.cols());
  if (!fit.coefficients.allFinite() || !fit.unscaledCovariance.allFinite() || !fit.residuals.allFinite()) {
    return failure("the numbers are too large or too small for the fit");
  }
  return fit;
}

Expected<Eigen::MatrixXd> unscaledCovariance(const Eigen::MatrixXd& design, double rankTolerance) {
  const auto factors = factorise(design, rankTolerance);
  if (!factors) {
    return failure(factors.error());
  }
  return invertNormalMatrix(*factors);
}

}  // namespace fettle::maths
