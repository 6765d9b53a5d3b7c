#include "core/measure/verdict.h"

#include <QTest>
#include <cmath>

#include "tests/support/test_main.h"

using namespace fettle;

/// Decisions by ISO 14253-1 with the guard band of the bench, g = t(0.95, dof)·u. Quantiles: 1.644854 for
/// infinite, 2.131847 for 4 degrees of freedom (any table of Student's t; Fisher and Yates 1963).
class TestVerdict : public QObject {
  Q_OBJECT

  static Quantity measured(double value, double u, double dof = infiniteDegreesOfFreedom) {
    return {value, "mm", u, dof, {}, {}};
  }

 private slots:
  void guardBandAtAnUpperLimit_data() {
    QTest::addColumn<double>("value");
    QTest::addColumn<double>("dof");
    QTest::addColumn<int>("verdict");
    const double infinite = infiniteDegreesOfFreedom;
    QTest::newRow("just inside by g") << 1 - 0.016449 - 1e-5 << infinite << int(Verdict::pass);
    QTest::newRow("inside by less than g") << 1 - 0.016449 + 1e-5 << infinite << int(Verdict::undecided);
    QTest::newRow("outside by less than g") << 1 + 0.016449 - 1e-5 << infinite << int(Verdict::undecided);
    QTest::newRow("outside by g") << 1 + 0.016449 + 1e-5 << infinite << int(Verdict::fail);
    QTest::newRow("four degrees of freedom widen it") << 1 - 0.0213 << 4.0 << int(Verdict::undecided);
    QTest::newRow("beyond the wider band") << 1 - 0.02132 << 4.0 << int(Verdict::pass);
  }
  void guardBandAtAnUpperLimit() {
    QFETCH(double, value);
    QFETCH(double, dof);
    QFETCH(int, verdict);
    const Judgement judgement = judge(measured(value, 0.01, dof), {{}, 1.0});
    QCOMPARE(int(judgement.verdict), verdict);
  }

  void withoutToleranceThereIsNone() { QCOMPARE(judge(measured(1, 0.1), {}).verdict, Verdict::none); }

  void withoutUncertaintyTheLimitDecides() {
    QCOMPARE(judge(plainQuantity(1.0001, "mm"), {{}, 1.0}).verdict, Verdict::fail);
    QCOMPARE(judge(plainQuantity(0.9999, "mm"), {{}, 1.0}).verdict, Verdict::pass);
  }

  void anIntervalDecidesByItsEnds() {
    Quantity quantity = plainQuantity(10, "mm");
    quantity.low = 9.5;
    quantity.high = 11;
    QCOMPARE(judge(quantity, {9.0, 12.0}).verdict, Verdict::pass);
    QCOMPARE(judge(quantity, {9.0, 10.5}).verdict, Verdict::undecided);
    QCOMPARE(judge(quantity, {11.5, 12.0}).verdict, Verdict::fail);
  }

  void twoGuardBandsMayFillTheTolerance() {
    QVERIFY(judge(measured(0, 0.1), {-0.1, 0.1}).tooCoarse);
    QVERIFY(!judge(measured(0, 0.01), {-0.1, 0.1}).tooCoarse);
  }

  // The list of the bench: for 0.1 mm the caliper (e 0.03: 2·1.645·0.03/√3 = 0.057) is the widest that
  // decides.
  void theWidestInstrumentThatWouldDoIsNamed() {
    const auto instrument = instrumentThatWouldDo(0.1, "mm");
    QVERIFY(instrument.has_value());
    QCOMPARE(instrument->name, instruments::caliper().name);
    QVERIFY(!instrumentThatWouldDo(1e-6, "mm").has_value());
    // Between 2·1.645·0.3/√3 = 0.570 and the rule's 0.742 only an alignment by eye has so wide an error.
    QCOMPARE(instrumentThatWouldDo(0.6, "mm")->name, instruments::caliper().name);
    QCOMPARE(instrumentThatWouldDo(0.015, "mm")->name, instruments::micrometer().name);
  }

  void theWorstCounts() {
    QCOMPARE(worst(Verdict::pass, Verdict::none), Verdict::pass);
    QCOMPARE(worst(Verdict::pass, Verdict::undecided), Verdict::undecided);
    QCOMPARE(worst(Verdict::fail, Verdict::undecided), Verdict::fail);
  }

  void wordsComeBack() {
    for (const Verdict verdict : {Verdict::none, Verdict::pass, Verdict::undecided, Verdict::fail}) {
      QCOMPARE(verdictFromKey(verdictKey(verdict)), verdict);
    }
  }
};

FETTLE_TEST(TestVerdict)
#include "test_verdict.moc"
