#include <QTest>
#include <cmath>
#include <limits>
#include <vector>

#include "core/maths/bicubic_spline.h"
#include "core/maths/cubic_spline.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

using List = std::vector<double>;

double cubic(double x) {
  return 1 - 2 * x + 0.3 * x * x + 0.7 * x * x * x;
}

}  // namespace

/// Not-a-knot splines reproduce what they must; SciPy is in tests/reference.
class TestCubicSpline : public QObject {
  Q_OBJECT

 private slots:
  void reproducesCubics() {
    for (const std::size_t count : {4u, 5u, 9u}) {
      List x;
      List y;
      for (std::size_t i = 0; i < count; ++i) {
        x.push_back(static_cast<double>(i) + 0.3 * std::sin(static_cast<double>(i)));
        y.push_back(cubic(x.back()));
      }
      const auto spline = CubicSpline::through(x, y);
      QVERIFY(spline.has_value());
      for (double at = x.front() - 0.5; at < x.back() + 0.5; at += 0.037) {
        QVERIFY(std::abs((*spline)(at)-cubic(at)) < 1e-11);
      }
    }
  }

  void parabolaAndLine() {
    const auto parabola = CubicSpline::through(List{0, 1, 3}, List{1, 2, 10});  // 1 + x^2
    QVERIFY(parabola.has_value());
    VERIFY_NEAR((*parabola)(2), 5, 1e-14);
    VERIFY_NEAR((*parabola)(0.5), 1.25, 1e-14);
    const auto line = CubicSpline::through(List{1, 3}, List{4, 0});
    QVERIFY(line.has_value());
    VERIFY_NEAR((*line)(2), 2, 1e-15);
    VERIFY_NEAR((*line)(4), -2, 1e-15);
  }

  void meetsItsPoints() {
    const List x{0, 0.5, 2, 2.2, 5};
    const List y{1, -1, 4, 4.5, 0};
    const auto spline = CubicSpline::through(x, y);
    QVERIFY(spline.has_value());
    for (std::size_t i = 0; i < x.size(); ++i) {
      VERIFY_NEAR((*spline)(x[i]), y[i], 1e-13);
    }
  }

  void refusals() {
    QVERIFY(!CubicSpline::through(List{1}, List{1}));
    QVERIFY(!CubicSpline::through(List{1, 2, 3}, List{1, 2}));
    QVERIFY(!CubicSpline::through(List{1, 3, 2}, List{1, 2, 3}));
    QVERIFY(!CubicSpline::through(List{1, 1, 2}, List{1, 2, 3}));
    QVERIFY(!CubicSpline::through(List{1, 2}, List{1, std::numeric_limits<double>::infinity()}));
  }

  /// A product of cubics in x and y is reproduced; both ways of evaluating agree.
  void bicubicReproducesProducts() {
    const List x{0, 1, 2.5, 3, 4.2, 6};
    const List y{-2, -1, 0.5, 2, 3};
    Eigen::MatrixXd z(5, 6);
    for (Eigen::Index row = 0; row < 5; ++row) {
      for (Eigen::Index column = 0; column < 6; ++column) {
        z(row, column) =
            cubic(x[static_cast<std::size_t>(column)]) * cubic(-y[static_cast<std::size_t>(row)]);
      }
    }
    const auto spline = BicubicSpline::through(x, y, z);
    QVERIFY(spline.has_value());
    const List atX{0.2, 2, 5.5};
    const List atY{-1.7, 0, 2.9};
    const Eigen::MatrixXd heights = spline->atGrid(atX, atY);
    for (std::size_t row = 0; row < 3; ++row) {
      for (std::size_t column = 0; column < 3; ++column) {
        const double got = (*spline)(atX[column], atY[row]);
        VERIFY_NEAR(got, cubic(atX[column]) * cubic(-atY[row]), 1e-10);
        QCOMPARE(heights(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)), got);
      }
    }
  }

  void bicubicOfTwoByTwoIsBilinear() {
    Eigen::Matrix2d z;
    z << 0, 1, 2, 7;
    const auto spline = BicubicSpline::through(List{0, 2}, List{0, 4}, z);
    QVERIFY(spline.has_value());
    VERIFY_NEAR((*spline)(1, 2), 2.5, 1e-15);
  }

  void bicubicRefusals() {
    const Eigen::MatrixXd z = Eigen::MatrixXd::Zero(3, 2);
    QVERIFY(BicubicSpline::through(List{0, 1}, List{0, 1, 2}, z));
    QVERIFY(!BicubicSpline::through(List{0, 1, 2}, List{0, 1}, z));
    QVERIFY(!BicubicSpline::through(List{0, 1}, List{0, 2, 1}, z));
    QVERIFY(!BicubicSpline::through(List{1, 1}, List{0, 1, 2}, z));
    QVERIFY(!BicubicSpline::through(List{}, List{}, Eigen::MatrixXd(0, 0)));
  }
};

FETTLE_TEST(TestCubicSpline)
#include "test_cubic_spline.moc"
