#include <QTest>
#include <cmath>
#include <random>

#include "core/maths/curve_fit.h"
#include "core/maths/least_squares.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

constexpr Eigen::Index readingCount = 40;

double timeOf(Eigen::Index i) {
  return 0.25 * static_cast<double>(i);
}

/// First-order rise b0 (1 - exp(-t/b1)) less its readings.
ResidualFunction riseResiduals(const Eigen::VectorXd& readings) {
  return [readings](const Eigen::VectorXd& b, Eigen::VectorXd& r) {
    for (Eigen::Index i = 0; i < r.size(); ++i) {
      r[i] = b[0] * (1 - std::exp(-timeOf(i) / b[1])) - readings[i];
    }
  };
}

JacobianFunction riseJacobian() {
  return [](const Eigen::VectorXd& b, Eigen::MatrixXd& jacobian) {
    for (Eigen::Index i = 0; i < jacobian.rows(); ++i) {
      const double decay = std::exp(-timeOf(i) / b[1]);
      jacobian(i, 0) = 1 - decay;
      jacobian(i, 1) = -b[0] * decay * timeOf(i) / (b[1] * b[1]);
    }
  };
}

Eigen::VectorXd noisyRise(double noise) {
  std::mt19937 random(3);
  std::normal_distribution<double> scatter(0, 1);
  Eigen::VectorXd readings(readingCount);
  for (Eigen::Index i = 0; i < readingCount; ++i) {
    readings[i] = 60 * (1 - std::exp(-timeOf(i) / 2.5)) + noise * scatter(random);
  }
  return readings;
}

}  // namespace

/// Fits recover what was built into the data; the certified sets are in tests/reference.
class TestCurveFit : public QObject {
  Q_OBJECT

 private slots:
  void recoversExactData() {
    const CurveFit fit = fitCurve(riseResiduals(noisyRise(0)), readingCount, Eigen::Vector2d(20, 9));
    QVERIFY2(fit.converged, fit.problem.c_str());
    VERIFY_NEAR(fit.parameters[0], 60, 1e-9);
    VERIFY_NEAR(fit.parameters[1], 2.5, 1e-10);
    QVERIFY(fit.standardErrors.maxCoeff() < 1e-9);
  }

  void givenAndNumericDerivativesAgree() {
    const auto residuals = riseResiduals(noisyRise(0.5));
    const CurveFit numeric = fitCurve(residuals, readingCount, Eigen::Vector2d(20, 9));
    const CurveFit given = fitCurve(residuals, readingCount, Eigen::Vector2d(20, 9), riseJacobian());
    QVERIFY(numeric.converged && given.converged);
    QVERIFY((numeric.parameters - given.parameters).norm() < 1e-6);
    QVERIFY((numeric.standardErrors - given.standardErrors).norm() < 1e-7);
    QCOMPARE(given.degreesOfFreedom, 38.0);
    // Built with 0.5; s of 38 degrees of freedom scatters by 0.5/sqrt(76) = 0.06.
    VERIFY_NEAR(given.residualStandardDeviation(), 0.5, 0.18);
    VERIFY_NEAR(given.parameters[0], 60, 4 * given.standardErrors[0]);
    VERIFY_NEAR(given.parameters[1], 2.5, 4 * given.standardErrors[1]);
  }

  /// For a linear model the answer is that of linear least squares, covariance included.
  void linearModel() {
    Eigen::MatrixXd design(6, 2);
    design << 1, 0, 1, 1, 1, 2, 1, 3, 1, 4, 1, 7;
    Eigen::VectorXd y(6);
    y << 1, 2.2, 2.9, 4.1, 5.2, 7.7;
    const auto linear = fitLeastSquares(design, y);
    const CurveFit fit = fitCurve([&](const Eigen::VectorXd& b, Eigen::VectorXd& r) { r = design * b - y; },
                                  6, Eigen::Vector2d(0, 0));
    QVERIFY(fit.converged);
    QVERIFY((fit.parameters - linear->coefficients).norm() < 1e-9);
    QVERIFY((fit.covariance - linear->covariance()).norm() < 1e-9);
  }

  /// The model does not exist for b <= 0; steps there must be refused, not followed.
  void stepsOutOfTheModelAreRefused() {
    const auto residuals = [](const Eigen::VectorXd& b, Eigen::VectorXd& r) {
      for (Eigen::Index i = 0; i < r.size(); ++i) {
        r[i] = std::log(b[0]) * static_cast<double>(i + 1) - std::log(0.2) * static_cast<double>(i + 1);
      }
    };
    const CurveFit fit = fitCurve(residuals, 4, Eigen::VectorXd::Constant(1, 5));
    QVERIFY2(fit.converged, fit.problem.c_str());
    VERIFY_NEAR(fit.parameters[0], 0.2, 1e-9);
  }

  void problemsAreTold() {
    const auto same = [](const Eigen::VectorXd& b, Eigen::VectorXd& r) { r.setConstant(b[0] + b[1] - 1); };
    const CurveFit dependent = fitCurve(same, 5, Eigen::Vector2d(3, 4));
    QVERIFY(!dependent.converged);
    QVERIFY(!dependent.problem.empty());

    const CurveFit few = fitCurve(same, 1, Eigen::Vector2d(3, 4));
    QVERIFY(!few.converged);

    const auto nowhere = [](const Eigen::VectorXd& b, Eigen::VectorXd& r) {
      r.setConstant(std::sqrt(b[0]));
    };
    const CurveFit outside = fitCurve(nowhere, 3, Eigen::VectorXd::Constant(1, -1));
    QVERIFY(!outside.converged);

    CurveFitOptions hurried;
    hurried.maximumEvaluations = 2;
    const CurveFit stopped =
        fitCurve(riseResiduals(noisyRise(0.5)), readingCount, Eigen::Vector2d(1, 90), {}, hurried);
    QVERIFY(!stopped.converged);
    QVERIFY(stopped.parameters.allFinite());
    QVERIFY(stopped.standardErrors.size() == 0);
  }
};

FETTLE_TEST(TestCurveFit)
#include "test_curve_fit.moc"
