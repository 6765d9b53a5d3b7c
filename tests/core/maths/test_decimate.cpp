#include "core/maths/decimate.h"

#include <QtTest>
#include <random>

#include "tests/support/test_main.h"

using fettle::maths::decimated;

namespace {

std::vector<double> evenEdges(double from, double to, int columns) {
  std::vector<double> edges;
  for (int i = 0; i <= columns; ++i) {
    edges.push_back(from + (to - from) * i / columns);
  }
  return edges;
}

}  // namespace

class TestDecimate : public QObject {
  Q_OBJECT

 private slots:
  void keepsAFewPoints();
  void keepsTheExtremesOfEveryColumn();
  void keepsOnePeakOfOneSample();
  void foldsWhatLiesOutside();
  void followsACurveThatTurnsBack();
  void notANumberHidesNoPeak();
  void nothingOfNothing();
};

// Built by hand: one point in each column stays as it is.
void TestDecimate::keepsAFewPoints() {
  const std::vector<double> x{0.5, 1.5, 2.5}, y{3, 1, 2};
  QCOMPARE(decimated(x, y, evenEdges(0, 3, 3)), (std::vector<std::size_t>{0, 1, 2}));
}

// Against a plain search of each column, seed fixed.
void TestDecimate::keepsTheExtremesOfEveryColumn() {
  std::mt19937 random(5);
  std::normal_distribution<double> noise;
  const int count = 20000, columns = 137;
  std::vector<double> x, y;
  for (int i = 0; i < count; ++i) {
    x.push_back(i);
    y.push_back(noise(random));
  }
  const auto edges = evenEdges(0, count, columns);
  const auto kept = decimated(x, y, edges);
  QVERIFY(kept.size() <= 2 * columns + 2);
  QVERIFY(std::is_sorted(kept.begin(), kept.end()));
  for (int k = 0; k < columns; ++k) {
    double low = 1e9, high = -1e9, keptLow = 1e9, keptHigh = -1e9;
    const auto inside = [&](std::size_t i) {
      return x[i] >= edges[static_cast<std::size_t>(k)] && x[i] < edges[static_cast<std::size_t>(k) + 1];
    };
    for (std::size_t i = 0; i < x.size(); ++i) {
      if (inside(i)) {
        low = std::min(low, y[i]);
        high = std::max(high, y[i]);
      }
    }
    for (const std::size_t i : kept) {
      if (inside(i)) {
        keptLow = std::min(keptLow, y[i]);
        keptHigh = std::max(keptHigh, y[i]);
      }
    }
    QCOMPARE(keptLow, low);
    QCOMPARE(keptHigh, high);
  }
}

void TestDecimate::keepsOnePeakOfOneSample() {
  std::vector<double> x(400000), y(400000, 0.0);
  std::iota(x.begin(), x.end(), 0.0);
  y[123457] = 1;
  const auto kept = decimated(x, y, evenEdges(0, 400000, 480));
  QVERIFY(std::find(kept.begin(), kept.end(), 123457U) != kept.end());
  QVERIFY(kept.size() <= 2 * 480 + 2);
}

// Zoomed: a thousand points on each side become at most two, and the ends of the curve.
void TestDecimate::foldsWhatLiesOutside() {
  std::vector<double> x(2100), y(2100);
  std::iota(x.begin(), x.end(), 0.0);
  std::transform(x.begin(), x.end(), y.begin(), [](double value) { return std::sin(value); });
  const auto kept = decimated(x, y, evenEdges(1000, 1100, 100));
  QVERIFY(kept.size() <= 100 + 2 * 2 + 2);
  for (std::size_t i = 1000; i < 1100; ++i) {
    QVERIFY(std::find(kept.begin(), kept.end(), i) != kept.end());
  }
}

// There and back through the same columns: both ways are kept.
void TestDecimate::followsACurveThatTurnsBack() {
  const std::vector<double> x{0.5, 1.5, 2.5, 1.5, 0.5}, y{0, 0, 1, 2, 2};
  QCOMPARE(decimated(x, y, evenEdges(0, 3, 3)), (std::vector<std::size_t>{0, 1, 2, 3, 4}));
}

void TestDecimate::notANumberHidesNoPeak() {
  const double blank = std::nan("");
  const std::vector<double> x{0.1, 0.2, 0.3, 0.4, 1.5}, y{blank, 2, 5, blank, 1};
  const auto kept = decimated(x, y, evenEdges(0, 2, 2));
  QVERIFY(std::find(kept.begin(), kept.end(), 1U) != kept.end());
  QVERIFY(std::find(kept.begin(), kept.end(), 2U) != kept.end());
}

void TestDecimate::nothingOfNothing() {
  QVERIFY(decimated({}, {}, evenEdges(0, 1, 4)).empty());
}

FETTLE_TEST(TestDecimate)
#include "test_decimate.moc"
