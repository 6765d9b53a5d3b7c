#include <QTest>

#include "core/maths/distributions.h"
#include "core/maths/straight_line.h"
#include "tests/reference/data_calibration.h"
#include "tests/support/digits.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

/// Published inverse predictions from straight lines. "Published" figures are compared to the digits
/// printed; "recomputed" ones, of SciPy, to theirs.
class TestInversePrediction : public QObject {
  Q_OBJECT

 private slots:
  void singleReading_data() {
    QTest::addColumn<QByteArray>("set");
    QTest::addColumn<double>("reading");
    QTest::addColumn<double>("confidence");
    QTest::addColumn<QList<double>>("published");
    QTest::addColumn<double>("publishedRounding");
    QTest::addColumn<QList<double>>("recomputed");
    QTest::newRow("thermostat 104, Graybill and Iyer p. 431")
        << QByteArray("thermostat") << 104.0 << 0.95 << QList<double>{103.995, 103.4, 104.6} << 0.0501
        << QList<double>{103.99492, 103.40405, 104.58946};
    QTest::newRow("thermostat 100, Graybill and Iyer p. 431")
        << QByteArray("thermostat") << 100.0 << 0.90 << QList<double>{100.1, 99.63, 100.59} << 0.0501
        << QList<double>{100.11232, 99.62940, 100.58850};
    QTest::newRow("arsenic 3, Greenwell and Schubert Kabban 2014")
        << QByteArray("arsenic") << 3.0 << 0.90 << QList<double>{2.9314, 2.6035, 3.2587} << 0.000051
        << QList<double>{2.93145, 2.60354, 3.25866};
  }

  void singleReading() {
    QFETCH(QByteArray, set);
    QFETCH(double, reading);
    QFETCH(double, confidence);
    QFETCH(QList<double>, published);
    QFETCH(double, publishedRounding);
    QFETCH(QList<double>, recomputed);
    const PointList& points = set == "arsenic" ? arsenic : thermostat;
    const auto line = fitStraightLine(points.x, points.y);
    QVERIFY(line.has_value());
    const double readings[]{reading};
    const auto found = predictInverse(*line, readings, confidence);
    QVERIFY(found && found->interval);
    const double got[]{found->value, found->interval->low, found->interval->high};
    for (int i = 0; i < 3; ++i) {
      VERIFY_NEAR(got[i], published[i], publishedRounding);
      VERIFY_NEAR(got[i], recomputed[i], 5.1e-6);
    }
  }

  /// Graybill and Iyer 1994, p. 433: 66.5, 99 % from 65.07 to 68.03.
  void meanResponse() {
    const auto line = fitStraightLine(chamber.x, chamber.y);
    QVERIFY(line.has_value());
    const auto found = predictInverse(*line, 400, 0.99);
    QVERIFY(found && found->interval);
    VERIFY_NEAR(found->value, 66.52004, 5.1e-6);
    VERIFY_NEAR(found->interval->low, 65.07089, 5.1e-6);
    VERIFY_NEAR(found->interval->high, 68.02583, 5.1e-6);
  }

  /// Greenwell and Schubert Kabban 2014: standard error 0.1929, 90 % Wald interval 2.6040 to 3.2589.
  void deltaMethod() {
    const auto line = fitStraightLine(arsenic.x, arsenic.y);
    QVERIFY(line.has_value());
    const double readings[]{3.0};
    const auto found = predictInverse(*line, readings, 0.90);
    QVERIFY(found.has_value());
    VERIFY_NEAR(found->standardError, 0.1929, 0.00005);
    const double half = studentQuantile(0.95, line->degreesOfFreedom) * found->standardError;
    VERIFY_NEAR(found->value - half, 2.6040, 0.00005);
    VERIFY_NEAR(found->value + half, 3.2589, 0.00005);
  }

  /// Three readings with pooled scatter (n + m - 3 degrees of freedom), 90 %; figures computed in SciPy.
  void pooledReadings() {
    const auto line = fitStraightLine(arsenic.x, arsenic.y);
    QVERIFY(line.has_value());
    const double readings[]{3.17, 3.09, 3.16};
    const auto found = predictInverse(*line, readings, 0.90);
    QVERIFY(found && found->interval);
    VERIFY_NEAR(found->value, 3.07319, 5.1e-6);
    VERIFY_NEAR(found->interval->low, 2.88430, 5.1e-6);
    VERIFY_NEAR(found->interval->high, 3.26159, 5.1e-6);
  }

  /// Half width at 3500, 99 %, delta method: published 0.07434, recomputed in SciPy 0.0743426.
  void din32645HalfWidth() {
    const auto line = fitStraightLine(din32645.x, din32645.y);
    QVERIFY(line.has_value());
    const double readings[]{3500.0};
    const auto found = predictInverse(*line, readings, 0.99);
    QVERIFY(found.has_value());
    const double half = studentQuantile(0.995, line->degreesOfFreedom) * found->standardError;
    VERIFY_NEAR(half, 0.0743426, 5.1e-8);
  }
};

FETTLE_TEST(TestInversePrediction)
#include "test_inverse_prediction.moc"
