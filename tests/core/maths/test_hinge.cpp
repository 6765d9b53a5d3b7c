#include <QTest>
#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "core/maths/distributions.h"
#include "core/maths/hinge.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

using List = std::vector<double>;

struct Points {
  List x;
  List y;
};

List flows(double from, double to, double step) {
  List x;
  for (int i = 0; from + i * step <= to + 1e-9; ++i) {
    x.push_back(from + i * step);
  }
  return x;
}

Points hingedPoints(const List& x, double plateau, double slope, double hinge, double noise,
                    std::mt19937& random) {
  std::normal_distribution<double> scatter(0, 1);
  Points points{x, {}};
  for (const double value : x) {
    points.y.push_back(plateau - slope * std::max(value - hinge, 0.0) + noise * scatter(random));
  }
  return points;
}

/// Residual sum of squares of the best plateau and slope for a given hinge, by the normal equations.
double sumAtHinge(const Points& points, double hinge) {
  double n = 0, sx = 0, sxx = 0, sy = 0, sxy = 0;
  for (std::size_t i = 0; i < points.x.size(); ++i) {
    const double t = std::max(points.x[i] - hinge, 0.0);
    n += 1, sx += t, sxx += t * t, sy += points.y[i], sxy += t * points.y[i];
  }
  const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  double sum = 0;
  for (std::size_t i = 0; i < points.x.size(); ++i) {
    const double off = points.y[i] - sy / n - slope * (std::max(points.x[i] - hinge, 0.0) - sx / n);
    sum += off * off;
  }
  return sum;
}

/// The same for a given fall point, over a fine scan of hinges: y = plateau g(x).
double sumAtFallPoint(const Points& points, double fall, double fraction) {
  double least = std::numeric_limits<double>::infinity();
  const double first = points.x.front();
  const double last = std::min(points.x.back(), fall - 1e-9);
  for (int k = 0; k <= 2000; ++k) {
    const double hinge = first + (last - first) * k / 2000;
    double gg = 0, gy = 0, yy = 0;
    for (std::size_t i = 0; i < points.x.size(); ++i) {
      const double g = 1 - fraction * std::max(points.x[i] - hinge, 0.0) / (fall - hinge);
      gg += g * g, gy += g * points.y[i], yy += points.y[i] * points.y[i];
    }
    least = std::min(least, yy - gy * gy / gg);
  }
  return least;
}

double limitOf(const Hinge& fit) {
  return fit.residualSumOfSquares * (1 + fQuantile(0.95, 1, fit.degreesOfFreedom) / fit.degreesOfFreedom);
}

}  // namespace

/// Hinges recover what was built, and their exact intervals agree with plain scans.
class TestHinge : public QObject {
  Q_OBJECT

 private slots:
  void exactDataBetweenAndOnPoints() {
    std::mt19937 random(1);
    for (const double hinge : {6.3, 12.0, 17.9}) {
      const Points points = hingedPoints(flows(2, 24, 2), 0.98, 0.03, hinge, 0, random);
      const auto fit = fitHinge(points.x, points.y);
      QVERIFY2(fit.has_value(), fit ? "" : fit.error().c_str());
      VERIFY_NEAR(fit->plateau, 0.98, 1e-13);
      VERIFY_NEAR(fit->slope, 0.03, 1e-13);
      VERIFY_NEAR(fit->hinge, hinge, 1e-11);
      const double fall = hinge + 0.05 * 0.98 / 0.03;
      VERIFY_NEAR(fit->fallPoint.value(), fall, 1e-11);
      VERIFY_NEAR(fit->hingeInterval.value().low, hinge, 1e-9);
      VERIFY_NEAR(fit->hingeInterval->high, hinge, 1e-9);
      VERIFY_NEAR(fit->fallPointInterval.value().low, fall, 1e-9);
      QVERIFY(!fit->hingeInterval->meetsRangeLow && !fit->hingeInterval->meetsRangeHigh);
    }
  }

  /// Global minimum and both intervals against scans of the sum of squares, on readings with repeats.
  void agreesWithScans() {
    std::mt19937 random(42);
    for (int round = 0; round < 12; ++round) {
      List x = flows(2, 26, 2);
      if (round % 2 == 1) {
        const List again = flows(8, 20, 4);
        x.insert(x.end(), again.begin(), again.end());
        std::sort(x.begin(), x.end());
      }
      const Points points = hingedPoints(x, 1, 0.02, 12.5 + 0.4 * round, 0.004 + 0.001 * round, random);
      const auto fit = fitHinge(points.x, points.y);
      QVERIFY(fit && fit->hingeInterval && fit->fallPointInterval);
      const double limit = limitOf(*fit);
      double least = std::numeric_limits<double>::infinity();
      double low = 1e9, high = -1e9;
      constexpr double step = 0.0005;
      for (double hinge = x.front(); hinge < x.back() - step; hinge += step) {
        const double sum = sumAtHinge(points, hinge);
        least = std::min(least, sum);
        if (sum <= limit) {
          low = std::min(low, hinge);
          high = std::max(high, hinge);
        }
      }
      QVERIFY(fit->residualSumOfSquares <= least * (1 + 1e-9));
      QVERIFY(fit->residualSumOfSquares >= least * (1 - 1e-5));
      VERIFY_NEAR(fit->hingeInterval->low, low, 2 * step);
      VERIFY_NEAR(fit->hingeInterval->high, high, 2 * step);
      // Just inside the ends the sum is below the limit, just outside above it.
      const auto& ends = *fit->fallPointInterval;
      QVERIFY(!ends.meetsRangeLow && !ends.meetsRangeHigh);
      QVERIFY(sumAtFallPoint(points, ends.low + 0.005, 0.05) <= limit);
      QVERIFY(sumAtFallPoint(points, ends.low - 0.005, 0.05) > limit);
      QVERIFY(sumAtFallPoint(points, ends.high - 0.005, 0.05) <= limit);
      QVERIFY(sumAtFallPoint(points, ends.high + 0.005, 0.05) > limit);
      for (double fall = x.front() + 1; fall < x.back(); fall += 0.5) {
        if (fall < ends.low || fall > ends.high) {
          QVERIFY(sumAtFallPoint(points, fall, 0.05) > limit);
        }
      }
    }
  }

  /// Linearised errors against the spread of repeated experiments of small scatter.
  void standardErrors() {
    std::mt19937 random(8);
    double squares = 0;
    double predicted = 0;
    constexpr int rounds = 400;
    for (int round = 0; round < rounds; ++round) {
      const auto points = hingedPoints(flows(2, 26, 1), 1, 0.02, 13.4, 0.002, random);
      const auto fit = fitHinge(points.x, points.y);
      QVERIFY(fit && fit->covariance);
      squares += (fit->hinge - 13.4) * (fit->hinge - 13.4) / rounds;
      predicted += (*fit->covariance)(2, 2) / rounds;
    }
    // A variance of 400 rounds scatters by sqrt(2/400) = 7 %.
    VERIFY_NEAR(squares / predicted, 1, 0.25);
  }

  /// Only the last flow falls: any hinge in the last gap fits alike.
  void fallAtTheLastPointIsNotBracketed() {
    const Points points{{2, 4, 6, 8, 10, 12}, {1.00, 1.01, 0.99, 1.00, 1.01, 0.90}};
    const auto fit = fitHinge(points.x, points.y);
    QVERIFY(fit && fit->hingeInterval && fit->fallPointInterval);
    QVERIFY(std::isfinite(fit->hinge) && std::isfinite(fit->slope));
    QVERIFY(fit->hingeInterval->meetsRangeHigh);
    QCOMPARE(fit->hingeInterval->high, 12.0);
    QVERIFY(fit->fallPointInterval->meetsRangeHigh);
  }

  /// All flows fall: the hinge may lie at or before the first.
  void fallFromTheFirstPointIsNotBracketed() {
    const Points points{{2, 4, 6, 8, 10, 12}, {1.00, 0.949, 0.902, 0.848, 0.801, 0.749}};
    const auto fit = fitHinge(points.x, points.y);
    QVERIFY(fit && fit->hingeInterval);
    QVERIFY(fit->hingeInterval->meetsRangeLow);
    QVERIFY(!fit->hingeInterval->meetsRangeHigh);
  }

  /// No fall beyond the scatter: the whole range stays possible.
  void levelDataAreNotBracketed() {
    const Points points{{2, 4, 6, 8, 10, 12, 14, 16}, {1.00, 1.01, 0.99, 1.01, 0.99, 1.00, 1.01, 0.995}};
    const auto fit = fitHinge(points.x, points.y);
    QVERIFY(fit && fit->hingeInterval && fit->fallPointInterval);
    QVERIFY(fit->hingeInterval->meetsRangeLow && fit->hingeInterval->meetsRangeHigh);
    QVERIFY(fit->fallPointInterval->meetsRangeLow && fit->fallPointInterval->meetsRangeHigh);
  }

  /// The fall point may lie beyond the points; its interval is cut there and says so.
  void fallPointBeyondThePoints() {
    std::mt19937 random(2);
    const auto points = hingedPoints(flows(2, 16, 1), 1, 0.01, 12, 0.0005, random);
    const auto fit = fitHinge(points.x, points.y);
    QVERIFY(fit && fit->fallPointInterval);
    VERIFY_NEAR(fit->fallPoint.value(), 17, 0.5);
    QCOMPARE(fit->fallPointInterval->high, 16.0);
    QVERIFY(fit->fallPointInterval->meetsRangeHigh);
    QVERIFY(!fit->fallPointInterval->meetsRangeLow);
  }

  void threePointsHaveNoInterval() {
    const auto fit = fitHinge(List{1, 2, 3}, List{1, 1, 0.5});
    QVERIFY(fit.has_value());
    QVERIFY(!fit->hingeInterval && !fit->fallPointInterval && !fit->covariance);
    QVERIFY(std::isfinite(fit->hinge));
  }

  void plateauBelowZeroHasNoFallPoint() {
    const auto fit = fitHinge(List{1, 2, 3, 4, 5, 6}, List{-1, -1, -1, -2, -3, -4});
    QVERIFY(fit.has_value());
    VERIFY_NEAR(fit->hinge, 3, 1e-12);
    QVERIFY(!fit->fallPoint && !fit->fallPointInterval);
  }

  void refusals() {
    QVERIFY(!fitHinge(List{1, 2, 3, 4}, List{1, 1, 1, 1}));
    QVERIFY(!fitHinge(List{1, 2, 3, 4}, List{0.1, 0.1, 0.1, 0.1}));
    QVERIFY(!fitHinge(List{1, 2, 3, 4}, List{1, 2, 3, 4}));
    QVERIFY(!fitHinge(List{1, 1, 2, 2}, List{1, 1, 0, 0}));
    QVERIFY(!fitHinge(List{1, 2, 3}, List{1, 1}));
    QVERIFY(!fitHinge(List{1, 2, 3, 4}, List{1, 1, NAN, 0}));
  }
};

FETTLE_TEST(TestHinge)
#include "test_hinge.moc"
