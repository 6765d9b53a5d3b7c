#include <QTest>
#include <cmath>
#include <limits>
#include <vector>

#include "core/maths/distributions.h"
#include "core/maths/least_squares.h"
#include "core/maths/straight_line.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

const std::vector<double> someX{1, 2, 3, 4, 6};
const std::vector<double> someY{2.1, 3.9, 6.2, 7.8, 12.1};

}  // namespace

/// Hand-worked lines; published ones are in tests/reference.
class TestStraightLine : public QObject {
  Q_OBJECT

 private slots:
  /// x 0 1 2, y 0 1 5: slope 2.5, intercept -0.5, residuals 0.5 -1 0.5, s^2 = 1.5 with one degree.
  void handCase() {
    const double x[]{0, 1, 2};
    const double y[]{0, 1, 5};
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    VERIFY_NEAR(line->slope, 2.5, 1e-12);
    VERIFY_NEAR(line->intercept, -0.5, 1e-12);
    VERIFY_NEAR(line->residualStandardDeviation, std::sqrt(1.5), 1e-12);
    VERIFY_NEAR(line->residuals[1], -1, 1e-12);
    VERIFY_NEAR(line->covariance(1, 1), 1.5 / 2, 1e-12);
    VERIFY_NEAR(line->covariance(0, 0), 1.5 * (1.0 / 3 + 1.0 / 2), 1e-12);
    VERIFY_NEAR(line->covariance(0, 1), -1.5 / 2, 1e-12);
    VERIFY_NEAR(line->standardErrorAt(1), std::sqrt(1.5 / 3), 1e-12);
    VERIFY_NEAR(line->predictionStandardErrorAt(1), std::sqrt(1.5 * (1 + 1.0 / 3)), 1e-12);
    VERIFY_NEAR(line->predictionStandardErrorAt(1, 4), std::sqrt(1.5 * (0.25 + 1.0 / 3)), 1e-12);
    // t = 2.5/sqrt(0.75) with one degree: p = 1 - 2/pi atan(t).
    const double t = 2.5 / std::sqrt(0.75);
    VERIFY_NEAR(line->slopeProbability(), 1 - 2 / std::acos(-1.0) * std::atan(t), 1e-12);
  }

  void standardErrorFromCovariance() {
    const auto line = fitStraightLine(someX, someY);
    QVERIFY(line.has_value());
    const Eigen::Vector2d at(1, 5.5);
    VERIFY_NEAR(line->standardErrorAt(5.5), std::sqrt(at.dot(line->covariance * at)), 1e-12);
  }

  /// A weight of 3 is the same as the point three times, but for the degrees of freedom.
  void weightsRepeatPoints() {
    const auto weighted = fitStraightLine(someX, someY, std::vector<double>{1, 1, 3, 1, 1});
    std::vector<double> x = someX;
    std::vector<double> y = someY;
    x.insert(x.end(), {3, 3});
    y.insert(y.end(), {6.2, 6.2});
    const auto repeated = fitStraightLine(x, y);
    QVERIFY(weighted && repeated);
    VERIFY_NEAR(weighted->slope, repeated->slope, 1e-12);
    VERIFY_NEAR(weighted->intercept, repeated->intercept, 1e-12);
    VERIFY_NEAR(weighted->residualSumOfSquares, repeated->residualSumOfSquares, 1e-12);
    QVERIFY((weighted->covariance / 5 - repeated->covariance / 3).norm() < 1e-12);
  }

  void offsetFarFromZero() {
    std::vector<double> x = someX;
    for (double& value : x) {
      value += 1e6;
    }
    const auto there = fitStraightLine(x, someY);
    const auto here = fitStraightLine(someX, someY);
    QVERIFY(there && here);
    VERIFY_NEAR(there->slope, here->slope, 1e-12);
    // The mean of x near 1e6 is a double good to 1e-10.
    VERIFY_NEAR(there->standardErrorAt(1e6 + 5), here->standardErrorAt(5), 1e-9);
  }

  void twoPointsHaveNoScatter() {
    const double x[]{1, 3};
    const double y[]{2, 8};
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    VERIFY_NEAR(line->slope, 3, 1e-12);
    QCOMPARE(line->degreesOfFreedom, 0.0);
    QVERIFY(line->covariance.isZero());
    QCOMPARE(line->slopeProbability(), 1.0);
    const auto inverse = predictInverse(*line, 5);
    QVERIFY(inverse.has_value());
    VERIFY_NEAR(inverse->value, 2, 1e-12);
    QVERIFY(!inverse->interval);
  }

  void exactDataGiveAPoint() {
    const double x[]{0, 1, 2, 3};
    const double y[]{1, 3, 5, 7};
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    QCOMPARE(line->slopeProbability(), 0.0);
    const auto inverse = predictInverse(*line, 4);
    QVERIFY(inverse && inverse->interval);
    VERIFY_NEAR(inverse->interval->low, 1.5, 1e-12);
    VERIFY_NEAR(inverse->interval->high, 1.5, 1e-12);
  }

  /// The Fieller ends are where the line's own confidence band holds y (its definition).
  void fiellerEndsLieOnTheBand() {
    const auto line = fitStraightLine(someX, someY);
    QVERIFY(line.has_value());
    const auto inverse = predictInverse(*line, 7, 0.95);
    QVERIFY(inverse && inverse->interval);
    const double t = studentQuantile(0.975, line->degreesOfFreedom);
    for (const double end : {inverse->interval->low, inverse->interval->high}) {
      VERIFY_NEAR(std::abs(line->at(end) - 7), t * line->standardErrorAt(end), 1e-10);
    }
  }

  void insignificantSlopeHasNoFiniteInterval() {
    const double x[]{0, 1, 2, 3};
    const double y[]{0, 1, -1, 0.5};
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    QVERIFY(line->slopeProbability() > 0.05);
    const auto inverse = predictInverse(*line, 0);
    QVERIFY(inverse.has_value());
    QVERIFY(std::isfinite(inverse->value));
    QVERIFY(!inverse->interval);
  }

  void levelLineHasNoInverse() {
    const double x[]{0, 1, 2, 3};
    const double y[]{1, 2, 2, 1};
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    QVERIFY(!predictInverse(*line, 5));
    QVERIFY(!predictInverse(*line, std::span<const double>()));
  }

  void refusals() {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    using List = std::vector<double>;
    QVERIFY(!fitStraightLine(List{1}, List{1}));
    QVERIFY(!fitStraightLine(List{1, 2}, List{1}));
    QVERIFY(!fitStraightLine(List{2, 2, 2}, List{1, 2, 3}));
    QVERIFY(!fitStraightLine(List{1, nan}, List{1, 2}));
    QVERIFY(!fitStraightLine(List{1, 2}, List{1, 2}, List{1, 0}));
    QVERIFY(!fitStraightLine(List{1, 2}, List{1, 2}, List{1}));
  }
};

FETTLE_TEST(TestStraightLine)
#include "test_straight_line.moc"
