#include <QTest>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "core/maths/distributions.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

/// Relations between the distributions; tables and SciPy are in tests/reference.
class TestDistributions : public QObject {
  Q_OBJECT

 private slots:
  void quantileUndoesProbability() {
    for (const double p : {0.001, 0.05, 0.5, 0.9, 0.9999}) {
      VERIFY_NEAR(normalLower(normalQuantile(p)), p, 1e-14);
      for (const double v : {0.8, 1.0, 5.5, 80.0}) {
        VERIFY_NEAR(studentLower(studentQuantile(p, v), v), p, 1e-13);
        VERIFY_NEAR(chiSquareLower(chiSquareQuantile(p, v), v), p, 1e-13);
        VERIFY_NEAR(fLower(fQuantile(p, v, 7.3), v, 7.3), p, 1e-13);
      }
    }
  }

  void lowerAndUpperMakeOne() {
    QCOMPARE(normalLower(0.7) + normalUpper(0.7), 1.0);
    QCOMPARE(studentLower(-1.3, 4.2) + studentUpper(-1.3, 4.2), 1.0);
    QCOMPARE(chiSquareLower(3, 4.2) + chiSquareUpper(3, 4.2), 1.0);
    QCOMPARE(fLower(1.4, 2, 9) + fUpper(1.4, 2, 9), 1.0);
  }

  /// t^2 with v degrees of freedom is F with 1 and v.
  void studentSquaredIsF() {
    for (const double v : {1.0, 4.0, 24.0}) {
      const double t = studentQuantile(0.975, v);
      VERIFY_NEAR(fQuantile(0.95, 1, v), t * t, 1e-12 * t * t);
    }
  }

  void infiniteDegreesOfFreedom() {
    const double infinity = std::numeric_limits<double>::infinity();
    QCOMPARE(studentQuantile(0.975, infinity), normalQuantile(0.975));
    QCOMPARE(studentUpper(1.5, infinity), normalUpper(1.5));
    QCOMPARE(studentLower(1.5, infinity), normalLower(1.5));
    VERIFY_NEAR(fQuantile(0.95, 3, infinity), fQuantile(0.95, 3, 1e9), 1e-7);
    VERIFY_NEAR(fUpper(2, 3, infinity), fUpper(2, 3, 1e9), 1e-8);
    QCOMPARE(fLower(2, 3, infinity), 1 - fUpper(2, 3, infinity));
  }

  void argumentsOutsideAreABug() {
    QVERIFY_EXCEPTION_THROWN(normalQuantile(1), std::domain_error);
    QVERIFY_EXCEPTION_THROWN(studentQuantile(0, 3), std::domain_error);
    QVERIFY_EXCEPTION_THROWN(studentQuantile(0.9, 0), std::domain_error);
    QVERIFY_EXCEPTION_THROWN(chiSquareQuantile(0.9, -1), std::domain_error);
    QVERIFY_EXCEPTION_THROWN(fQuantile(1.1, 1, 3), std::domain_error);
  }
};

FETTLE_TEST(TestDistributions)
#include "test_distributions.moc"
