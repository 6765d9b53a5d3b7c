#include "core/measure/format.h"

#include <QTest>

#include "tests/support/test_main.h"

using namespace fettle;

/// Expected: by hand from JCGM 100:2008, 7.2.6 (two significant digits of U), and the wording of format.h.
class TestFormat : public QObject {
  Q_OBJECT

  static QString shown(const Quantity& quantity) {
    return QString::fromStdString(formatQuantity(quantity));
  }

 private slots:
  // U = 1.959964·0.009 = 0.01764: shown to two digits.
  void withUncertainty() {
    QCOMPARE(shown({0.4118, "mm", 0.009, infiniteDegreesOfFreedom, {}, {}}), QString("0.412 ± 0.018 mm"));
  }

  void withAnInterval() {
    QCOMPARE(shown({10.59, "mm3/s", {}, infiniteDegreesOfFreedom, 10.5, 10.7}),
             QString("10.59 (10.50 … 10.70) mm³/s"));
  }

  void withoutUncertainty() {
    QCOMPARE(shown(plainQuantity(295, "mm")), QString("295 mm"));
    QCOMPARE(shown(plainQuantity(0.0812345, "mm")), QString("0.0812 mm"));
  }

  void noMoreDigitsThanAreKnown() {
    QCOMPARE(shown(plainQuantity(0.85, "A")), QString("0.85 A"));
    QCOMPARE(shown(plainQuantity(4, "A")), QString("4 A"));
    QCOMPARE(shown(plainQuantity(0.1482, "C")), QString("0.148 °C"));
    QCOMPARE(shown(plainQuantity(226.54, "s")), QString("226.5 s"));
  }

  void hugeAndTinyNumbersStayShort() {
    QCOMPARE(QString::fromStdString(formatNumber(1e300)), QString("1e+300"));
    QCOMPARE(QString::fromStdString(formatNumber(-2.5e15)), QString("\u22122.5e+15"));
    QCOMPARE(QString::fromStdString(formatNumber(1e-9)), QString("1e-09"));
    QCOMPARE(QString::fromStdString(formatNumber(0)), QString("0"));
    QCOMPARE(QString::fromStdString(formatNumber(0.000001)), QString("0.000001"));
    QCOMPARE(QString::fromStdString(formatFixed(1e300, 2)), QString("1e+300"));
    QCOMPARE(QString::fromStdString(formatPlain(1.5e20)), QString("1.5e+20"));
    QCOMPARE(shown(plainQuantity(-2.5e300, "mm")), QString("\u22122.5e+300 mm"));
  }

  void countsHaveNoDecimals() {
    QCOMPARE(shown(plainQuantity(6, "1")), QString("6"));
    QCOMPARE(shown(plainQuantity(0, "1")), QString("0"));
    QCOMPARE(shown(plainQuantity(0.985, "1")), QString("0.985"));
  }
};

FETTLE_TEST(TestFormat)
#include "test_format.moc"
