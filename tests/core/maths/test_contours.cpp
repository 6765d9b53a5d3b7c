#include "core/maths/contours.h"

#include <QtTest>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using fettle::maths::Contour;
using fettle::maths::contoursAt;

namespace {

using Grid = std::vector<std::vector<double>>;

Grid heights(const std::vector<double>& x, const std::vector<double>& y,
             const std::function<double(double, double)>& height) {
  Grid z;
  for (const double row : y) {
    auto& line = z.emplace_back();
    for (const double column : x) {
      line.push_back(height(column, row));
    }
  }
  return z;
}

std::vector<double> steps(double from, double to, int count) {
  std::vector<double> values;
  for (int i = 0; i < count; ++i) {
    values.push_back(from + (to - from) * i / (count - 1));
  }
  return values;
}

double lengthOf(const Contour& contour) {
  double length = 0;
  for (std::size_t i = 1; i < contour.points.size(); ++i) {
    length += std::hypot(contour.points[i].x - contour.points[i - 1].x,
                         contour.points[i].y - contour.points[i - 1].y);
  }
  return length;
}

}  // namespace

class TestContours : public QObject {
  Q_OBJECT

 private slots:
  void straightOnAPlane();
  void roundOnADome();
  void saddleIsSettledByItsMiddle();
  void blankCellsCarryNoLine();
  void fallingRowsGiveTheSameLine();
  void noneOutsideTheRange();
};

// z = 0.3 x + 0.4 y over 0..10 x 0..10: the line at 2 runs from (20/3, 0) to (0, 5), length sqrt(400/9 +
// 25).
void TestContours::straightOnAPlane() {
  const auto x = steps(0, 10, 8), y = steps(0, 10, 6);
  const auto z = heights(x, y, [](double a, double b) { return 0.3 * a + 0.4 * b; });
  const auto contours = contoursAt(2, x, y, z);
  QCOMPARE(contours.size(), 1U);
  QVERIFY(!contours[0].closed);
  for (const auto& point : contours[0].points) {
    VERIFY_NEAR(0.3 * point.x + 0.4 * point.y, 2, 1e-12);
  }
  VERIFY_NEAR(lengthOf(contours[0]), std::sqrt(400.0 / 9 + 25), 1e-12);
}

// z = 1 - r^2 at 0.75: a circle of radius 0.5. Chords on a net of 0.05 leave it by at most 0.05^2/(8*0.5)
// along the sides and as much within the cells.
void TestContours::roundOnADome() {
  const auto x = steps(-1, 1, 41), y = steps(-1, 1, 41);
  const auto z = heights(x, y, [](double a, double b) { return 1 - a * a - b * b; });
  const auto contours = contoursAt(0.75, x, y, z);
  QCOMPARE(contours.size(), 1U);
  QVERIFY(contours[0].closed);
  QCOMPARE(contours[0].points.front().x, contours[0].points.back().x);
  for (const auto& point : contours[0].points) {
    VERIFY_NEAR(std::hypot(point.x, point.y), 0.5, 2 * 0.05 * 0.05 / 4);
  }
  VERIFY_NEAR(lengthOf(contours[0]), std::numbers::pi, 0.01);
}

// Corners 1 0 / 0 1 with the mean 0.5: at 0.4 the high corners are joined, at 0.6 they are apart; by hand
// the lines at 0.4 cut off the low corners, which start 0.6 from a high one.
void TestContours::saddleIsSettledByItsMiddle() {
  const std::vector<double> sides{0, 1};
  const Grid z{{1, 0}, {0, 1}};
  for (const double level : {0.4, 0.6}) {
    const auto contours = contoursAt(level, sides, sides, z);
    QCOMPARE(contours.size(), 2U);
    const bool joined = level < 0.5;
    for (const auto& contour : contours) {
      QCOMPARE(contour.points.size(), 2U);
      const double sum =
          contour.points[0].x + contour.points[0].y + contour.points[1].x + contour.points[1].y;
      const double difference =
          contour.points[0].x - contour.points[0].y + contour.points[1].x - contour.points[1].y;
      // Round a low corner (1,0) or (0,1) the sum of coordinates stays at 2, round a high one the
      // difference at 0.
      QVERIFY(joined ? std::abs(sum - 2) < 1e-12 : std::abs(difference) < 1e-12);
    }
  }
}

void TestContours::blankCellsCarryNoLine() {
  const auto x = steps(0, 4, 5), y = steps(0, 4, 5);
  auto z = heights(x, y, [](double a, double) { return a; });
  z[2][2] = std::nan("");
  const auto contours = contoursAt(1.5, x, y, z);
  QCOMPARE(contours.size(), 2U);  // below and above the two blank cells
  VERIFY_NEAR(lengthOf(contours[0]) + lengthOf(contours[1]), 2, 1e-12);
}

void TestContours::fallingRowsGiveTheSameLine() {
  const auto x = steps(0, 10, 5), y = steps(10, 0, 5);
  const auto contours =
      contoursAt(2, x, y, heights(x, y, [](double a, double b) { return 0.3 * a + 0.4 * b; }));
  QCOMPARE(contours.size(), 1U);
  VERIFY_NEAR(lengthOf(contours[0]), std::sqrt(400.0 / 9 + 25), 1e-12);
}

void TestContours::noneOutsideTheRange() {
  const std::vector<double> sides{0, 1};
  QVERIFY(contoursAt(2, sides, sides, Grid{{1, 0}, {0, 1}}).empty());
  QVERIFY(contoursAt(1, {}, {}, {}).empty());
}

FETTLE_TEST(TestContours)
#include "test_contours.moc"
