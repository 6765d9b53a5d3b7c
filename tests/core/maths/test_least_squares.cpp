#include <QTest>
#include <limits>

#include "core/maths/least_squares.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

/// Hand-worked fits; the certified sets are in tests/reference.
class TestLeastSquares : public QObject {
  Q_OBJECT

 private slots:
  /// Mean of 1 2 6 and its error: s^2 = 14/2, variance of the mean 7/3.
  void meanAsFit() {
    const auto fit = fitLeastSquares(Eigen::MatrixXd::Ones(3, 1), Eigen::Vector3d(1, 2, 6));
    QVERIFY(fit.has_value());
    VERIFY_NEAR(fit->coefficients[0], 3, 1e-14);
    VERIFY_NEAR(fit->residualSumOfSquares, 14, 1e-13);
    VERIFY_NEAR(fit->covariance()(0, 0), 7.0 / 3, 1e-13);
    VERIFY_NEAR(fit->standardErrors()[0], std::sqrt(7.0 / 3), 1e-13);
    QCOMPARE(fit->degreesOfFreedom, 2.0);
  }

  /// The unscaled covariance is the inverse of the normal matrix, whatever the columns' sizes.
  void covarianceOfUnevenColumns() {
    Eigen::MatrixXd design(5, 3);
    design << 1, 1e-6, 2e7, 1, 3e-6, 1e7, 1, 2e-6, -1e7, 1, -4e-6, 3e7, 1, 0, 0;
    const auto inverse = unscaledCovariance(design);
    QVERIFY(inverse.has_value());
    const Eigen::MatrixXd identity = design.transpose() * design * *inverse;
    const Eigen::Vector3d scale = design.colwise().norm();
    const Eigen::MatrixXd scaled = scale.cwiseInverse().asDiagonal() * identity * scale.asDiagonal();
    QVERIFY((scaled - Eigen::Matrix3d::Identity()).norm() < 1e-12);
  }

  void exactFitHasNoScatter() {
    Eigen::MatrixXd design(2, 2);
    design << 1, 0, 1, 1;
    const auto fit = fitLeastSquares(design, Eigen::Vector2d(3, 5));
    QVERIFY(fit.has_value());
    VERIFY_NEAR(fit->coefficients[1], 2, 1e-14);
    QCOMPARE(fit->residualStandardDeviation(), 0.0);
    QVERIFY(fit->covariance().isZero());
  }

  void refusals() {
    Eigen::MatrixXd dependent(4, 3);
    dependent << 1, 1, 2, 1, 2, 3, 1, 3, 4, 1, 4, 5;
    QVERIFY(!fitLeastSquares(dependent, Eigen::Vector4d(1, 2, 3, 4)));
    QVERIFY(!unscaledCovariance(dependent));
    QVERIFY(!fitLeastSquares(Eigen::MatrixXd::Zero(4, 1), Eigen::Vector4d(1, 2, 3, 4)));
    QVERIFY(!fitLeastSquares(Eigen::MatrixXd::Ones(1, 2), Eigen::VectorXd::Ones(1)));
    QVERIFY(!fitLeastSquares(Eigen::MatrixXd::Ones(3, 0), Eigen::Vector3d(1, 2, 3)));
    QVERIFY(!fitLeastSquares(Eigen::MatrixXd::Ones(3, 1), Eigen::Vector2d(1, 2)));
    Eigen::Vector3d bad(1, std::numeric_limits<double>::quiet_NaN(), 2);
    QVERIFY(!fitLeastSquares(Eigen::MatrixXd::Ones(3, 1), bad));
    QVERIFY(!fitLeastSquares(bad, Eigen::Vector3d(1, 2, 3)));
  }
};

FETTLE_TEST(TestLeastSquares)
#include "test_least_squares.moc"
