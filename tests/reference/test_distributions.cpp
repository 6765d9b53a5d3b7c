#include <QTest>
#include <cmath>

#include "core/maths/distributions.h"
#include "core/maths/outliers.h"
#include "tests/reference/data_tables.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

/// Printed tables of critical values.
class TestDistributions : public QObject {
  Q_OBJECT

 private slots:
  void student() {
    for (const CriticalValue& row : studentTable) {
      const double t = studentQuantile(1 - row.upperProbability, row.degreesOfFreedom);
      // SciPy 1.10's Student quantiles are good to about 5e-9 only, as the closed form below shows.
      VERIFY_NEAR(t, row.exact, 1e-8 * std::max(1.0, row.exact));
      VERIFY_NEAR(studentUpper(t, row.degreesOfFreedom), row.upperProbability, 1e-14);
      const bool misprinted =
          row.upperProbability == 0.001 &&
          (row.degreesOfFreedom == 1 || (row.degreesOfFreedom >= 7 && row.degreesOfFreedom <= 12));
      QCOMPARE(std::abs(t - row.published) <= 0.000501, !misprinted);
    }
  }

  /// With two degrees of freedom t = (2p - 1)/sqrt(2p(1 - p)) (Johnson, Kotz and Balakrishnan 1995,
  /// Continuous Univariate Distributions 2, chapter 28); SciPy 1.10 has 6.964556719 for p = 0.99.
  void studentClosedForm() {
    for (const double p : {0.6, 0.9, 0.95, 0.975, 0.99, 0.995}) {
      const double exact = (2 * p - 1) / std::sqrt(2 * p * (1 - p));
      VERIFY_NEAR(studentQuantile(p, 2), exact, 1e-13 * exact);
    }
  }

  void chiSquare() {
    for (const CriticalValue& row : chiSquareTable) {
      const double x = chiSquareQuantile(1 - row.upperProbability, row.degreesOfFreedom);
      VERIFY_NEAR(x, row.exact, 5.1e-10 * std::max(1.0, row.exact));
      VERIFY_NEAR(chiSquareUpper(x, row.degreesOfFreedom), row.upperProbability, 1e-14);
      QVERIFY(std::abs(chiSquareLower(x, row.degreesOfFreedom) - 1 + row.upperProbability) < 1e-14);
      // Three decimals are printed for the lower tail, five for the upper; two of those are cut to four
      // decimals and off by up to 3.4 there (2 and 7 degrees of freedom at 0.005).
      const bool cut =
          row.upperProbability == 0.005 && (row.degreesOfFreedom == 2 || row.degreesOfFreedom == 7);
      const double rounding = row.upperProbability >= 0.9 ? 0.000501 : cut ? 0.00035 : 0.0000051;
      VERIFY_NEAR(x, row.published, rounding);
    }
  }

  /// The two-decimal table differs from the exact value by one in the second decimal in eight entries (its
  /// 2.14 for n = 11 is 2.152), ISO 5725-2 by one in the third decimal in a few.
  void grubbs() {
    for (const GrubbsValue& row : grubbsTable) {
      const double critical =
          grubbsCriticalValue(static_cast<std::size_t>(row.count), 2 * row.oneSidedAlpha);
      VERIFY_NEAR(critical, row.exact, 5.1e-7);
      VERIFY_NEAR(critical, row.published, 0.0151);
    }
  }

  /// NIST/SEMATECH e-Handbook 1.3.5.17.1, data of Tietjen and Moore: G = 2.468765; two-sided 5 % critical
  /// value 2.1266 (SciPy).
  void tietjenAndMoore() {
    const double values[]{199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    const auto test = grubbsTest(values);
    QVERIFY(test.has_value());
    VERIFY_NEAR(test->statistic, 2.468765, 5.1e-7);
    VERIFY_NEAR(test->critical, 2.1266, 5.1e-5);
    QVERIFY(test->outlier);
    QCOMPARE(test->index, 7u);
    const auto scores = modifiedZScores(values, 0);
    QVERIFY(scores.has_value());
    // Iglewicz and Hoaglin's formula with 0.6745 gives 29.963 (SciPy); 1/1.4826 = 0.67449 differs from it
    // by 1.4e-5.
    VERIFY_NEAR(scores->back(), 29.963, 0.001);
    QCOMPARE(outlierIndices(values, 0), std::vector<std::size_t>{7});
  }
};

FETTLE_TEST(TestDistributions)
#include "test_distributions.moc"
