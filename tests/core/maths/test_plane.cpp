#include <QTest>
#include <cmath>
#include <limits>
#include <vector>

#include "core/maths/plane.h"
#include "core/maths/quadratic_surface.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

using List = std::vector<double>;

struct Places {
  List x;
  List y;
};

Places placesOf(int columns, int rows, double spacing) {
  Places grid;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      grid.x.push_back(20 + spacing * column);
      grid.y.push_back(-30 + spacing * row);
    }
  }
  return grid;
}

}  // namespace

/// Least-squares planes and quadratic surfaces, hand cases.
class TestPlane : public QObject {
  Q_OBJECT

 private slots:
  /// Corners 0 0 0 h of a unit square: plane -h/4 + h/2 x + h/2 y, residuals +-h/4, variance h^2/4 with one
  /// degree of freedom.
  void oneCornerUp() {
    const double h = 0.4;
    const List x{0, 1, 0, 1};
    const List y{0, 0, 1, 1};
    const List z{0, 0, 0, h};
    const auto fit = fitPlane(x, y, z);
    QVERIFY(fit.has_value());
    QVERIFY(std::abs(fit->plane.a + h / 4) < 1e-15);
    VERIFY_NEAR(fit->plane.b, h / 2, 1e-15);
    VERIFY_NEAR(fit->plane.c, h / 2, 1e-15);
    VERIFY_NEAR(fit->peakToValley, h / 2, 1e-15);
    VERIFY_NEAR(fit->rootMeanSquare, h / 4, 1e-15);
    VERIFY_NEAR(fit->residualStandardDeviation, h / 2, 1e-15);
    // Normal matrix about the centre: diag(4, 1, 1).
    VERIFY_NEAR(fit->covariance(1, 1), h * h / 4, 1e-15);
    VERIFY_NEAR(fit->standardErrorAt(0.5, 0.5), h / 4, 1e-15);
    VERIFY_NEAR(fit->standardErrorAt(1, 1), h / 2 * std::sqrt(0.25 + 0.25 + 0.25), 1e-15);
  }

  void threePointsAreMetExactly() {
    const auto fit = fitPlane(List{0, 10, 0}, List{0, 0, 10}, List{1, 2, 4});
    QVERIFY(fit.has_value());
    VERIFY_NEAR(fit->plane.at(10, 10), 5, 1e-13);
    QCOMPARE(fit->degreesOfFreedom, 0.0);
    QVERIFY(fit->covariance.isZero());
    QVERIFY(fit->peakToValley < 1e-14);
  }

  void refusals() {
    const double infinite = std::numeric_limits<double>::infinity();
    QVERIFY(!fitPlane(List{0, 1}, List{0, 1}, List{0, 1}));
    QVERIFY(!fitPlane(List{0, 1, 2}, List{0, 1, 1}, List{0, 1}));
    QVERIFY(!fitPlane(List{0, 1, 2}, List{0, 1, infinite}, List{0, 1, 2}));
    QVERIFY(!fitPlane(List{5, 5, 5}, List{0, 1, 7}, List{0, 1, 2}));
    QVERIFY(!fitPlane(List{5, 5, 5}, List{2, 2, 2}, List{0, 1, 2}));
    // A slanting row whose coordinates are not exact in binary.
    List x;
    List y;
    for (int i = 0; i < 50; ++i) {
      x.push_back(0.1 * i);
      y.push_back(17.3 + 0.03 * i);
    }
    QVERIFY(!fitPlane(x, y, x));
  }

  /// All six coefficients come back from a surface built of them.
  void quadraticRecoversItsTerms() {
    const Places grid = placesOf(5, 4, 25);  // x 20..120, y -30..45
    List z;
    for (std::size_t i = 0; i < grid.x.size(); ++i) {
      const double u = (grid.x[i] - 70) / 50;
      const double v = (grid.y[i] - 7.5) / 37.5;
      z.push_back(0.3 + 0.02 * u - 0.05 * v + 0.11 * u * u - 0.07 * v * v + 0.013 * u * v);
    }
    const auto surface = fitQuadraticSurface(grid.x, grid.y, z);
    QVERIFY(surface.has_value());
    VERIFY_NEAR(surface->a, 0.3, 1e-14);
    VERIFY_NEAR(surface->b, 0.02, 1e-14);
    VERIFY_NEAR(surface->c, -0.05, 1e-14);
    VERIFY_NEAR(surface->bowX, 0.11, 1e-14);
    VERIFY_NEAR(surface->bowY, -0.07, 1e-14);
    VERIFY_NEAR(surface->twist, 0.013, 1e-14);
    VERIFY_NEAR(surface->at(grid.x[7], grid.y[7]), z[7], 1e-14);
    QVERIFY(surface->rootMeanSquare < 1e-14);
    QCOMPARE(surface->degreesOfFreedom, 14.0);
  }

  void quadraticRefusals() {
    const Places two = placesOf(2, 5, 25);  // two columns cannot tell bow from tilt
    QVERIFY(!fitQuadraticSurface(two.x, two.y, two.x));
    const Places row = placesOf(9, 1, 25);
    QVERIFY(!fitQuadraticSurface(row.x, row.y, row.x));
    const Places few = placesOf(5, 1, 25);
    QVERIFY(!fitQuadraticSurface(few.x, few.y, few.x));
    const Places good = placesOf(3, 3, 25);
    QVERIFY(fitQuadraticSurface(good.x, good.y, good.x));
    QVERIFY(!fitQuadraticSurface(good.x, good.y, few.x));
  }
};

FETTLE_TEST(TestPlane)
#include "test_plane.moc"
