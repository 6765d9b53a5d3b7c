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
    // A large floor silences the median rule; Grubbs still marks.
    const double plain[]{1.0, 1.1, 0.9, 1.05, 0.95, 1.0, 2.0};
    QCOMPARE(outlierIndices(plain, 10), std::vector<std::size_t>{6});
  }

  void grubbsIsForUpToThirty() {
    std::vector<double> values(31, 0.0);
    for (std::size_t i = 0; i < values.size(); ++i) {
      values[i] = static_cast<double>(i % 5);
    }
    values[13] = 40;
    QVERIFY(grubbsTest(values)->outlier);
    QVERIFY(outlierIndices(values, 100).empty());
    values.pop_back();
    QCOMPARE(outlierIndices(values, 100), std::vector<std::size_t>{13});
  }
};

FETTLE_TEST(TestOutliers)
#include "test_outliers.moc"
