#include <QTest>

#include "core/maths/descriptive.h"
#include "tests/reference/data_nist_univariate.h"
#include "tests/support/digits.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

/// Certified values of the NIST Statistical Reference Datasets, univariate.
class TestNistUnivariate : public QObject {
  Q_OBJECT

 private slots:
  /// The standard deviation of NumAcc3 and 4 is limited by the decimal inputs as doubles hold them
  /// (9.5 and 8.3 digits), not by the sum.
  void certified_data() {
    QTest::addColumn<int>("index");
    QTest::addColumn<double>("meanDigits");
    QTest::addColumn<double>("deviationDigits");
    QTest::addColumn<double>("autocorrelationDigits");
    QTest::newRow("Lew") << 0 << 14.0 << 14.0 << 13.0;
    QTest::newRow("Mavro") << 1 << 14.0 << 12.0 << 12.0;
    QTest::newRow("Michelso") << 2 << 14.0 << 13.0 << 12.0;
    QTest::newRow("NumAcc1") << 3 << 14.0 << 14.0 << 14.0;
    QTest::newRow("NumAcc2") << 4 << 14.0 << 14.0 << 13.0;
    QTest::newRow("NumAcc3") << 5 << 14.0 << 9.0 << 9.0;
    QTest::newRow("NumAcc4") << 6 << 14.0 << 8.0 << 8.0;
  }

  void certified() {
    QFETCH(int, index);
    QFETCH(double, meanDigits);
    QFETCH(double, deviationDigits);
    QFETCH(double, autocorrelationDigits);
    const UnivariateSet* const sets[]{&lew, &mavro, &michelso, &numAcc1, &numAcc2, &numAcc3, &numAcc4};
    const UnivariateSet& set = *sets[index];
    const double s = sampleStandardDeviation(set.values);
    const double r1 = lag1Autocorrelation(set.values).value();
    qInfo("%s: mean %.1f digits, sd %.1f, r1 %.1f", set.name, matchingDigits(mean(set.values), set.mean),
          matchingDigits(s, set.standardDeviation), matchingDigits(r1, set.lag1Autocorrelation));
    VERIFY_DIGITS("mean", mean(set.values), set.mean, meanDigits);
    VERIFY_DIGITS("standard deviation", s, set.standardDeviation, deviationDigits);
    VERIFY_DIGITS("autocorrelation", r1, set.lag1Autocorrelation, autocorrelationDigits);
  }
};

FETTLE_TEST(TestNistUnivariate)
#include "test_nist_univariate.moc"
