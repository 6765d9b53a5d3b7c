#include <QTest>
#include <cmath>
#include <vector>

#include "core/maths/broken_line.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

using List = std::vector<double>;

List brokenAt(const List& x, double psi, double before, double after) {
  List y;
  for (const double value : x) {
    y.push_back(3 + before * value + (after - before) * std::max(value - psi, 0.0));
  }
  return y;
}

}  // namespace

/// Broken lines recover what was built; the published example is in tests/reference.
class TestBrokenLine : public QObject {
  Q_OBJECT

 private slots:
  void exactDataBetweenAndOnPoints() {
    const List x{0, 1, 2, 3, 4, 5, 6, 7};
    for (const double psi : {2.3, 4.0, 5.9}) {
      const List y = brokenAt(x, psi, 0.5, -1.25);
      const auto line = fitBrokenLine(x, y);
      QVERIFY2(line.has_value(), line ? "" : line.error().c_str());
      VERIFY_NEAR(line->breakPoint, psi, 1e-12);
      VERIFY_NEAR(line->slopeBefore, 0.5, 1e-12);
      VERIFY_NEAR(line->slopeAfter, -1.25, 1e-12);
      VERIFY_NEAR(line->breakLevel, 3 + 0.5 * psi, 1e-12);
      VERIFY_NEAR(line->at(6.5), brokenAt({6.5}, psi, 0.5, -1.25)[0], 1e-12);
      QVERIFY(line->breakPointInterval.has_value());
      VERIFY_NEAR(line->breakPointInterval->low, psi, 1e-9);
      VERIFY_NEAR(line->breakPointInterval->high, psi, 1e-9);
      QVERIFY(!line->breakPointInterval->meetsRangeLow);
      QVERIFY(!line->breakPointInterval->meetsRangeHigh);
    }
  }

  /// On a straight line with scatter the break can be anywhere: the set reaches both ends.
  void straightDataDoNotBracket() {
    const List x{0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    const List y{0.1, 0.9, 2.1, 2.9, 4.1, 4.9, 6.1, 6.9, 8.1, 8.9};
    const auto line = fitBrokenLine(x, y);
    QVERIFY(line && line->breakPointInterval);
    QVERIFY(line->breakPointInterval->meetsRangeLow);
    QVERIFY(line->breakPointInterval->meetsRangeHigh);
    QCOMPARE(line->breakPointInterval->low, 0.0);
    QCOMPARE(line->breakPointInterval->high, 9.0);
  }

  void fourPointsHaveNoInterval() {
    const auto line = fitBrokenLine(List{0, 1, 2, 3}, List{0, 1, 1, 0});
    QVERIFY(line.has_value());
    QVERIFY(line->residualSumOfSquares < 1e-28);
    QVERIFY(!line->breakPointInterval);
    QVERIFY(!line->covariance);
  }

  void refusals() {
    QVERIFY(!fitBrokenLine(List{0, 1, 2}, List{0, 1, 1}));
    QVERIFY(!fitBrokenLine(List{0, 0, 1, 1, 2, 2}, List{0, 1, 1, 0, 0, 1}));
    QVERIFY(!fitBrokenLine(List{0, 1, 2, 3}, List{0, 1, 1}));
    QVERIFY(!fitBrokenLine(List{0, 1, 2, NAN}, List{0, 1, 1, 2}));
  }
};

FETTLE_TEST(TestBrokenLine)
#include "test_broken_line.moc"
