#include "core/maths/plane.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/finite.h"
#include "core/maths/least_squares.h"

namespace fettle::maths {

double PlaneFit::standardErrorAt(double x, double y) const {
  const Eigen::Vector3d position(1, x, y);
  return std::sqrt(std::max(0.0, position.dot(covariance * position)));
}

Expected<PlaneFit> fitPlane(std::span<const double> x, std::span<const double> y,
                            std::span<const double> z) {
  if (x.size() != y.size() || x.size() != z.size()) {
    return failure("the plane got unequal numbers of x, y and z");
  }
  if (x.size() < 3) {
    return failure("a plane needs at least three points");
  }
  if (!allFinite(x) || !allFinite(y) || !allFinite(z)) {
    return failure("the plane got a value that is not a finite number");
  }
  const auto count = static_cast<Eigen::Index>(x.size());
  const double meanX = mean(x);
  const double meanY = mean(y);
  // About the centroid the columns are at right angles to the first and nothing is lost to rounding.
  Eigen::MatrixXd design(count, 3);
  design.col(0).setOnes();
  design.col(1) = Eigen::Map<const Eigen::VectorXd>(x.data(), count).array() - meanX;
  design.col(2) = Eigen::Map<const Eigen::VectorXd>(y.data(), count).array() - meanY;
  // Points this close to a line would put the tilt across it at the mercy of rounding.
  constexpr double collinear = 1e-9;
  const auto fit = fitLeastSquares(design, Eigen::Map<const Eigen::VectorXd>(z.data(), count), collinear);
  if (!fit) {
    return failure("the points lie on one line, so no plane can be laid through them");
  }
  Eigen::Matrix3d toOrigin = Eigen::Matrix3d::Identity();
  toOrigin(0, 1) = -meanX;
  toOrigin(0, 2) = -meanY;
  const Eigen::Vector3d coefficients = toOrigin * fit->coefficients;
  PlaneFit result;
  result.plane = {coefficients[0], coefficients[1], coefficients[2]};
  result.covariance = toOrigin * fit->covariance() * toOrigin.transpose();
  result.residuals.assign(fit->residuals.begin(), fit->residuals.end());
  result.residualStandardDeviation = fit->residualStandardDeviation();
  result.degreesOfFreedom = fit->degreesOfFreedom;
  result.rootMeanSquare = std::sqrt(fit->residualSumOfSquares / static_cast<double>(count));
  result.peakToValley = fit->residuals.maxCoeff() - fit->residuals.minCoeff();
  return result;
}

}  // namespace fettle::maths
