#include "core/measure/quantity.h"

#include <QTest>
#include <cmath>

#include "tests/support/test_main.h"

using namespace fettle;

/// Expanded uncertainty, JCGM 100:2008, table G.2: t(95 %) is 2.78 for 4, 2.09 for 19 and 1.960 for
/// infinite degrees of freedom.
class TestQuantity : public QObject {
  Q_OBJECT

 private slots:
  void expanded_data() {
    QTest::addColumn<double>("dof");
    QTest::addColumn<double>("factor");
    QTest::newRow("4") << 4.0 << 2.78;
    QTest::newRow("19") << 19.0 << 2.09;
    QTest::newRow("infinite") << infiniteDegreesOfFreedom << 1.960;
  }
  void expanded() {
    QFETCH(double, dof);
    QFETCH(double, factor);
    const auto half = expandedUncertainty({7, "mm", 2.0, dof, {}, {}});
    QVERIFY(half.has_value());
    QVERIFY2(std::abs(*half - 2 * factor) < 0.01, qPrintable(QString::number(*half)));
  }

  void unknownStaysUnknown() {
    QVERIFY(!expandedUncertainty(plainQuantity(7, "mm")));
    QVERIFY(!halfInterval(plainQuantity(7, "mm")));
  }

  void anIntervalHasAHalfWidth() {
    Quantity quantity = plainQuantity(7, "mm");
    quantity.low = 6;
    quantity.high = 9;
    QCOMPARE(halfInterval(quantity), std::optional(1.5));
  }
};

FETTLE_TEST(TestQuantity)
#include "test_quantity.moc"
