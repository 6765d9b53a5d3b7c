#pragma once
#include <Eigen/Core>
#include <functional>
#include <string>

namespace fettle::maths {

/// Fills residuals (n, sized beforehand) for the given parameters (p): observed less model, or the
/// reverse, each divided by its standard deviation if they differ.
using ResidualFunction = std::function<void(const Eigen::VectorXd& parameters, Eigen::VectorXd& residuals)>;

/// Fills the derivatives of the residuals (n by p, sized beforehand).
using JacobianFunction = std::function<void(const Eigen::VectorXd& parameters, Eigen::MatrixXd& jacobian)>;

struct CurveFitOptions {
  int maximumEvaluations = 2000;  ///< of the residual function, numeric derivatives not counted
  double tolerance = 1e-15;       ///< relative, of the sum of squares; parameters settle to about its root
};

/// Outcome of a non-linear least-squares fit. Parameters and residuals are the best found even when it did
/// not converge; errors are given only when it did.
struct CurveFit {
  bool converged = false;
  std::string problem;         ///< one sentence; empty when converged
  Eigen::VectorXd parameters;  ///< p
  Eigen::VectorXd residuals;   ///< n
  double residualSumOfSquares = 0;
  double degreesOfFreedom = 0;     ///< n - p; 0: nothing is known of the scatter
  Eigen::MatrixXd covariance;      ///< RSS/(n - p) (J^T J)^-1, p by p; zero without degrees of freedom
  Eigen::VectorXd standardErrors;  ///< p
  int iterations = 0;

  double residualStandardDeviation() const;
};

/// Minimises the sum of squares of count residuals by Levenberg-Marquardt in a trust region
/// (More 1978, Lecture Notes in Mathematics 630, 105; Eigen's port of MINPACK lmder), derivatives by
/// central differences unless a Jacobian is given. Standard errors from the linearisation at the solution
/// (Bates and Watts 1988, Nonlinear Regression Analysis, 2.2).
/// Does not converge when residuals are not finite at the start, there are fewer residuals than
/// parameters, the evaluations run out, or the data cannot tell the parameters apart.
CurveFit fitCurve(const ResidualFunction& residuals, Eigen::Index count, const Eigen::VectorXd& start,
                  const JacobianFunction& jacobian = {}, const CurveFitOptions& options = {});

}  // namespace fettle::maths
