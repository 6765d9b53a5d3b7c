#include <QTest>
#include <stdexcept>
#include <vector>

#include "core/maths/descriptive.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

/// Hand-worked values; the certified sets are in tests/reference.
class TestDescriptive : public QObject {
  Q_OBJECT

 private slots:
  void meanAndDeviation() {
    const double values[]{2, 4, 4, 4, 5, 5, 7, 9};  // sum 40, squares about the mean 32
    QCOMPARE(mean(values), 5.0);
    QCOMPARE(sampleStandardDeviation(values), std::sqrt(32.0 / 7));
  }

  void deviationOfEqualValuesIsNothing() {
    const std::vector<double> values(3, 0.1);
    QVERIFY(sampleStandardDeviation(values) < 1e-16);
    QCOMPARE(mean(values), 0.1);
  }

  void medianOfOddAndEven() {
    const double odd[]{5, 1, 3};
    const double even[]{4, 1, 3, 2};
    const double one[]{7};
    QCOMPARE(median(odd), 3.0);
    QCOMPARE(median(even), 2.5);
    QCOMPARE(median(one), 7.0);
  }

  void scaledDeviation() {
    const double values[]{1, 1, 2, 2, 4, 6, 9};  // median 2, deviations 1 1 0 0 2 4 7, their median 1
    QCOMPARE(scaledMedianAbsoluteDeviation(values), 1.4826);
  }

  /// Definition 7 of Hyndman and Fan 1996: position 1 + (n - 1) p.
  void quantiles() {
    const double values[]{40, 10, 30, 20};
    QCOMPARE(quantile(values, 0), 10.0);
    QCOMPARE(quantile(values, 1), 40.0);
    QCOMPARE(quantile(values, 0.25), 17.5);
    QCOMPARE(quantile(values, 0.9), 37.0);
  }

  void autocorrelation() {
    const double values[]{1, 2, 3,
                          4};  // deviations -1.5 -0.5 0.5 1.5: products 0.75 - 0.25 + 0.75, squares 5
    QCOMPARE(lag1Autocorrelation(values).value(), 0.25);
    const double equal[]{3, 3, 3};
    QVERIFY(!lag1Autocorrelation(equal));
  }

  void tooFewValuesAreABug() {
    const std::vector<double> none;
    const double one[]{1};
    QVERIFY_EXCEPTION_THROWN(mean(none), std::invalid_argument);
    QVERIFY_EXCEPTION_THROWN(median(none), std::invalid_argument);
    QVERIFY_EXCEPTION_THROWN(sampleStandardDeviation(one), std::invalid_argument);
    QVERIFY_EXCEPTION_THROWN(lag1Autocorrelation(one), std::invalid_argument);
    QVERIFY_EXCEPTION_THROWN(quantile(one, 1.5), std::invalid_argument);
  }
};

FETTLE_TEST(TestDescriptive)
#include "test_descriptive.moc"
