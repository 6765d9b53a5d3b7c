#include <QTest>
#include <stdexcept>
#include <vector>

#include "core/maths/outliers.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

/// Hand-worked cases; the published example is in tests/reference.
class TestOutliers : public QObject {
  Q_OBJECT

 private slots:
  void scoreUsesTheScatterWhenItIsLarge() {
    const double values[]{1, 2, 3, 4, 100};  // median 3, MAD 1
    const auto scores = modifiedZScores(values, 0.5);
    QVERIFY(scores.has_value());
    QCOMPARE(scores->front(), -2 / 1.4826);
    QCOMPARE(scores->back(), 97 / 1.4826);
  }

  void floorKeepsResolutionFromMarking() {
    const double values[]{1.00, 1.00, 1.00, 1.00, 1.01};  // MAD 0: one step of the instrument
    QVERIFY(!modifiedZScores(values, 0));
    const auto scores = modifiedZScores(values, 0.01 / std::sqrt(12.0));
    QVERIFY(scores.has_value());
    VERIFY_NEAR(scores->back(), std::sqrt(12.0), 1e-9);  // 3.46: not over 3.5
  }

  void nothingToScoreFails() {
    QVERIFY(!modifiedZScores({}, 1));
    const double two[]{1, 2};
    QVERIFY(!grubbsTest(two));
    QVERIFY_EXCEPTION_THROWN(grubbsCriticalValue(2), std::invalid_argument);
  }

  void equalReadingsAreNoOutliers() {
    const std::vector<double> values(6, 0.1);
    const auto test = grubbsTest(values);
    QVERIFY(test.has_value());
    QCOMPARE(test->statistic, 0.0);
    QVERIFY(!test->outlier);
    QVERIFY(outlierIndices(values, 0.003).empty());
  }

  void eitherRuleMarks() {
    // Two far readings hide from Grubbs behind their own scatter, not from the median.
    const double masked[]{1.0, 1.1, 0.9, 1.05, 0.95, 1.0, 5.0, 5.1};
    QVERIFY(!grubbsTest(masked)->outlier);
    QCOMPARE(outlierIndices(masked, 0.003), (std::vector<std::size_t>{6, 7}));
    // Readings on two levels make the median rule wide (scaled MAD 1.48); Grubbs still marks.
    const double onTwoLevels[]{-1, 1, -1, 1, -1, 1, -1, 1, -1, 1, 5};
    QVERIFY((*modifiedZScores(onTwoLevels, 0.003))[10] < 3.5);
    QCOMPARE(outlierIndices(onTwoLevels, 0.003), std::vector<std::size_t>{10});
    // What the resolution explains is no outlier: 5 against ±1 read to whole tens.
    QVERIFY(grubbsTest(onTwoLevels, 0.003)->outlier);
    QVERIFY(!grubbsTest(onTwoLevels, 10 / 3.4641016151377544)->outlier);
  }

  // Two of three readings are equal and the third is half a step or a whole one away: G = 2/sqrt(3) is the
  // greatest there is for n = 3, above the critical 1.154. The resolution explains them all.
  void oneStepOfTheResolutionIsNoOutlier() {
    constexpr double fromResolution = 0.01 / 3.4641016151377544;
    const double halfAStep[]{1.745, 1.745, 1.740};
    QVERIFY(grubbsTest(halfAStep)->outlier);
    QVERIFY(outlierIndices(halfAStep, fromResolution).empty());
    for (std::size_t n = 3; n <= 30; ++n) {
      std::vector<double> values(n, 1.74);
      values.back() = 1.75;
      QVERIFY2(outlierIndices(values, fromResolution).empty(), qPrintable(QString::number(n)));
    }
    const double tenSteps[]{1.74, 1.74, 1.84};
    QCOMPARE(outlierIndices(tenSteps, fromResolution), std::vector<std::size_t>{2});
  }

  void grubbsIsForUpToThirty() {
    std::vector<double> values;
    for (int i = 0; i < 31; ++i) {
      values.push_back(i % 2 == 0 ? -1 : 1);
    }
    values[12] = 5;
    QVERIFY(grubbsTest(values)->outlier);
    QVERIFY(outlierIndices(values, 0.003).empty());
    values.pop_back();
    QCOMPARE(outlierIndices(values, 0.003), std::vector<std::size_t>{12});
  }
};

FETTLE_TEST(TestOutliers)
#include "test_outliers.moc"
