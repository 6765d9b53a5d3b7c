#include <QTest>

#include "core/maths/broken_line.h"
#include "tests/reference/data_segmented.h"
#include "tests/support/digits.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

/// Broken-line regression of the stagnant band data.
class TestSegmented : public QObject {
  Q_OBJECT

 private slots:
  /// Figures to which the R package segmented 1.6-2 and a grid search with golden section agree. A second,
  /// local minimum (break 0.0084788, RSS 0.00983727) must not be taken.
  void reachesTheGlobalMinimum() {
    const auto line = fitBrokenLine(stagnantBand.x, stagnantBand.y);
    QVERIFY2(line.has_value(), line ? "" : line.error().c_str());
    VERIFY_DIGITS("break point", line->breakPoint, 0.0411057845, 8);
    VERIFY_DIGITS("residual sum of squares", line->residualSumOfSquares, 0.00914019723, 8);
    VERIFY_DIGITS("slope before", line->slopeBefore, -0.42207681, 7);
    VERIFY_DIGITS("slope after", line->slopeAfter, -1.02056754, 7);
    QCOMPARE(line->degreesOfFreedom, 24.0);
  }

  /// Standard errors as R segmented prints them, five digits.
  void standardErrors() {
    const auto line = fitBrokenLine(stagnantBand.x, stagnantBand.y);
    QVERIFY(line && line->covariance);
    const Eigen::Vector4d errors = line->covariance->diagonal().cwiseSqrt();
    VERIFY_DIGITS("slope before", errors[1], 0.011487, 4);
    VERIFY_DIGITS("slope after", errors[2], 0.015068, 4);
    VERIFY_DIGITS("break point", errors[3], 0.022835, 4);
  }

  /// 95 % profile F interval, found by a scan of the sum of squares in SciPy, six decimals.
  void profileInterval() {
    const auto line = fitBrokenLine(stagnantBand.x, stagnantBand.y);
    QVERIFY(line && line->breakPointInterval);
    VERIFY_NEAR(line->breakPointInterval->low, -0.028176, 6e-7);
    VERIFY_NEAR(line->breakPointInterval->high, 0.087991, 6e-7);
    QVERIFY(!line->breakPointInterval->meetsRangeLow);
    QVERIFY(!line->breakPointInterval->meetsRangeHigh);
  }
};

FETTLE_TEST(TestSegmented)
#include "test_segmented.moc"
