#include "core/maths/curve_fit.h"

#include <cmath>
#include <limits>
#include <unsupported/Eigen/NonLinearOptimization>

#include "core/maths/least_squares.h"

namespace fettle::maths {
namespace {

/// What Eigen's optimiser asks for: residuals and their derivatives.
class Problem {
 public:
  Problem(const ResidualFunction& residuals, const JacobianFunction& jacobian, Eigen::Index count)
      : m_residuals(residuals), m_jacobian(jacobian), m_above(count), m_below(count) {}

  Eigen::Index values() const { return m_above.size(); }

  int operator()(const Eigen::VectorXd& parameters, Eigen::VectorXd& residuals) const {
    m_residuals(parameters, residuals);
    if (!residuals.allFinite()) {
      // A step to where the model does not exist must look bad, not poison the optimiser.
      residuals.setConstant(1e100);
    }
    return 0;
  }

  int df(const Eigen::VectorXd& parameters, Eigen::MatrixXd& jacobian) const {
    if (m_jacobian) {
      m_jacobian(parameters, jacobian);
    } else {
      differentiate(parameters, jacobian);
    }
    return jacobian.allFinite() ? 0 : -1;
  }

 private:
  /// Central differences; the step balances truncation (h^2) against rounding (eps/h).
  void differentiate(Eigen::VectorXd parameters, Eigen::MatrixXd& jacobian) const {
    const double relativeStep = std::cbrt(std::numeric_limits<double>::epsilon());
    for (Eigen::Index j = 0; j < parameters.size(); ++j) {
      const double centre = parameters[j];
      const double step = relativeStep * (centre != 0 ? std::abs(centre) : 1);
      parameters[j] = centre + step;
      const double above = parameters[j];
      m_residuals(parameters, m_above);
      parameters[j] = centre - step;
      m_residuals(parameters, m_below);
      jacobian.col(j) = (m_above - m_below) / (above - parameters[j]);
      parameters[j] = centre;
    }
  }

  const ResidualFunction& m_residuals;
  const JacobianFunction& m_jacobian;
  mutable Eigen::VectorXd m_above;
  mutable Eigen::VectorXd m_below;
};

bool settled(Eigen::LevenbergMarquardtSpace::Status status) {
  using namespace Eigen::LevenbergMarquardtSpace;
  switch (status) {
    case RelativeReductionTooSmall:
    case RelativeErrorTooSmall:
    case RelativeErrorAndReductionTooSmall:
    case CosinusTooSmall:
    // The next three: no further progress is possible in double precision.
    case FtolTooSmall:
    case XtolTooSmall:
    case GtolTooSmall:
      return true;
    default:
      return false;
  }
}

std::string problemOf(Eigen::LevenbergMarquardtSpace::Status status) {
  if (status == Eigen::LevenbergMarquardtSpace::TooManyFunctionEvaluation) {
    return "the fit did not settle; better starting values or more readings are needed";
  }
  return "the fit left the range in which its model can be computed";
}

/// Covariance and standard errors at the solution.
void addErrors(const Problem& problem, CurveFit& fit) {
  Eigen::MatrixXd jacobian(fit.residuals.size(), fit.parameters.size());
  if (problem.df(fit.parameters, jacobian) != 0) {
    fit.problem = "the fit has no finite derivatives at its solution";
    return;
  }
  const auto inverse = unscaledCovariance(jacobian);
  if (!inverse) {
    fit.problem = inverse.error();
    return;
  }
  const double s = fit.residualStandardDeviation();
  fit.covariance = s * s * *inverse;
  fit.standardErrors = s * inverse->diagonal().cwiseSqrt();
  if (!fit.covariance.allFinite()) {
    fit.problem = "the points cannot tell the coefficients apart";
  }
}

}  // namespace

double CurveFit::residualStandardDeviation() const {
  return degreesOfFreedom > 0 ? std::sqrt(residualSumOfSquares / degreesOfFreedom) : 0;
}

CurveFit fitCurve(const ResidualFunction& residuals, Eigen::Index count, const Eigen::VectorXd& start,
                  const JacobianFunction& jacobian, const CurveFitOptions& options) {
  CurveFit fit;
  fit.parameters = start;
  if (start.size() == 0 || count < start.size()) {
    fit.problem = "there are fewer points than coefficients";
    return fit;
  }
  fit.degreesOfFreedom = static_cast<double>(count - start.size());
  fit.residuals.resize(count);
  residuals(start, fit.residuals);
  if (!start.allFinite() || !fit.residuals.allFinite()) {
    fit.residuals.resize(0);
    fit.problem = "the model cannot be computed at the starting values";
    return fit;
  }
  Problem problem(residuals, jacobian, count);
  Eigen::LevenbergMarquardt<Problem> optimiser(problem);
  optimiser.parameters.maxfev = options.maximumEvaluations;
  optimiser.parameters.ftol = options.tolerance;
  optimiser.parameters.xtol = options.tolerance;
  const auto status = optimiser.minimize(fit.parameters);
  fit.iterations = static_cast<int>(optimiser.iter);
  residuals(fit.parameters, fit.residuals);
  fit.residualSumOfSquares = fit.residuals.squaredNorm();
  if (!settled(status)) {
    fit.problem = problemOf(status);
  } else {
    addErrors(problem, fit);
  }
  fit.converged = fit.problem.empty();
  return fit;
}

}  // namespace fettle::maths
