#include <QTest>
#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "core/maths/minimum_zone.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

using List = std::vector<double>;

struct Cloud {
  List x;
  List y;
  List z;
};

Cloud squareGrid(int side) {
  Cloud cloud;
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column) {
      cloud.x.push_back(10.0 * column);
      cloud.y.push_back(10.0 * row);
      cloud.z.push_back(0);
    }
  }
  return cloud;
}

/// Whether the zone is optimal by its contacts: some mixture of high contacts lies over some mixture of low
/// ones, so no tilt can bring the planes together (the convex hulls of the feet meet). Checked through the
/// separating lines between hull vertices and, for single points, between all pairs of contacts.
bool contactsInterlock(const Cloud& cloud, const MinimumZone& zone) {
  constexpr int directions = 7200;
  for (int k = 0; k < directions; ++k) {
    const double angle = 2 * std::acos(-1.0) * k / directions;
    const auto along = [&](std::size_t i) {
      return cloud.x[i] * std::cos(angle) + cloud.y[i] * std::sin(angle);
    };
    double leastHigh = 1e300;
    double greatestLow = -1e300;
    for (const std::size_t i : zone.high) {
      leastHigh = std::min(leastHigh, along(i));
    }
    for (const std::size_t i : zone.low) {
      greatestLow = std::max(greatestLow, along(i));
    }
    if (leastHigh > greatestLow + 1e-6) {
      return false;
    }
  }
  return true;
}

}  // namespace

/// Minimum-zone flatness: hand cases and properties; SciPy and measured terrain are in tests/reference.
class TestMinimumZone : public QObject {
  Q_OBJECT

 private slots:
  /// Corners +h -h +h -h round a square: level zone of width 2h.
  void twistedSquare() {
    const auto zone = fitMinimumZone(List{0, 1, 1, 0}, List{0, 0, 1, 1}, List{0.3, -0.3, 0.3, -0.3});
    QVERIFY(zone.has_value());
    VERIFY_NEAR(zone->width, 0.6, 1e-15);
    QVERIFY(std::abs(zone->plane.b) < 1e-15);
    QVERIFY(std::abs(zone->plane.c) < 1e-15);
    QCOMPARE(zone->high, (std::vector<std::size_t>{0, 2}));
    QCOMPARE(zone->low, (std::vector<std::size_t>{1, 3}));
  }

  /// Corners 0 0 0 h: width h/2.
  void oneCornerUp() {
    const auto zone = fitMinimumZone(List{0, 1, 0, 1}, List{0, 0, 1, 1}, List{0, 0, 0, 0.5});
    QVERIFY(zone.has_value());
    VERIFY_NEAR(zone->width, 0.25, 1e-15);
    QCOMPARE(zone->high.size() + zone->low.size(), 4u);
  }

  /// A bump in the middle of a tilted grid: the width is its height, the tilt is that of the grid.
  void bumpOnTiltedGrid() {
    Cloud cloud = squareGrid(5);
    for (std::size_t i = 0; i < cloud.z.size(); ++i) {
      cloud.z[i] = 1 + 0.01 * cloud.x[i] - 0.02 * cloud.y[i];
    }
    cloud.z[12] += 0.7;
    const auto zone = fitMinimumZone(cloud.x, cloud.y, cloud.z);
    QVERIFY(zone.has_value());
    VERIFY_NEAR(zone->width, 0.7, 1e-14);
    VERIFY_NEAR(zone->plane.b, 0.01, 1e-15);
    VERIFY_NEAR(zone->plane.c, -0.02, 1e-15);
    VERIFY_NEAR(zone->plane.a, 1.35, 1e-14);
    QCOMPARE(zone->high, std::vector<std::size_t>{12});
    QCOMPARE(zone->low.size(), 24u);
  }

  void flatAndThreePoints() {
    const Cloud flat = squareGrid(4);
    const auto zone = fitMinimumZone(flat.x, flat.y, flat.z);
    QVERIFY(zone.has_value());
    QCOMPARE(zone->width, 0.0);
    QCOMPARE(zone->high.size(), 16u);
    QCOMPARE(zone->low.size(), 16u);
    const auto three = fitMinimumZone(List{0, 10, 0}, List{0, 0, 10}, List{1, 2, 4});
    QVERIFY(three.has_value());
    QVERIFY(three->width < 1e-14);
    VERIFY_NEAR(three->plane.at(10, 10), 5, 1e-13);
  }

  /// Contradictory heights at one place: their difference is the least width there is.
  void twoHeightsAtOnePlace() {
    const auto zone = fitMinimumZone(List{0, 1, 0, 1, 0}, List{0, 0, 1, 1, 0}, List{0, 0, 0, 0, 0.2});
    QVERIFY(zone.has_value());
    VERIFY_NEAR(zone->width, 0.2, 1e-15);
  }

  /// Properties of the optimum on random surfaces, coarse rounding (many ties) included: no point outside,
  /// not wider than the least-squares plane's range, contacts that interlock.
  void optimumHolds() {
    std::mt19937 random(5);
    std::normal_distribution<double> noise(0, 0.05);
    for (const int side : {3, 4, 6, 11, 21}) {
      for (const double step : {0.0, 0.05}) {
        Cloud cloud = squareGrid(side);
        for (double& z : cloud.z) {
          z = noise(random);
          z = step > 0 ? step * std::round(z / step) : z;
        }
        const auto zone = fitMinimumZone(cloud.x, cloud.y, cloud.z);
        const auto fit = fitPlane(cloud.x, cloud.y, cloud.z);
        QVERIFY(zone && fit);
        QVERIFY(zone->width <= fit->peakToValley + 1e-14);
        for (std::size_t i = 0; i < cloud.z.size(); ++i) {
          const double off = cloud.z[i] - zone->plane.at(cloud.x[i], cloud.y[i]);
          QVERIFY(std::abs(off) <= zone->width / 2 + 1e-13);
        }
        QVERIFY(contactsInterlock(cloud, *zone));
      }
    }
  }

  void refusals() {
    QVERIFY(!fitMinimumZone(List{0, 1}, List{0, 1}, List{0, 1}));
    QVERIFY(!fitMinimumZone(List{0, 1, 2, 3}, List{0, 2, 4, 6}, List{0, 1, 0, 2}));
    QVERIFY(!fitMinimumZone(List{0, 1, 2}, List{0, 2, 4}, List{0, 1}));
  }
};

FETTLE_TEST(TestMinimumZone)
#include "test_minimum_zone.moc"
