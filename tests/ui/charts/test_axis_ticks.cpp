#include "ui/charts/axis_ticks.h"

#include <QtTest>

#include "tests/support/test_main.h"

using fettle::Axis;
using namespace fettle::ui;

class TestAxisTicks : public QObject {
  Q_OBJECT

 private slots:
  void marksAreRound_data();
  void marksAreRound();
  void neverMoreThanAsked();
  void minusSign();
  void longFiguresArePowers();
  void decades();
  void narrowLogarithmicRange();
  void titlesCarryUnits();
  void valuesHaveTwoMoreDecimals();
  void thingsAreMarkedByNameOrNumber();
};

void TestAxisTicks::thingsAreMarkedByNameOrNumber() {
  Axis axis = fettle::countedAxis("part");
  QCOMPARE(ticksOf(axis, {0.5, 3.5}, 12).labels, (QStringList{"1", "2", "3"}));
  QCOMPARE(ticksOf(axis, {0.5, 40.5}, 6).labels, (QStringList{"10", "20", "30", "40"}));
  axis.names = {"frame", "bed plate"};
  QCOMPARE(ticksOf(axis, {0.5, 2.5}, 12).labels, (QStringList{"frame", "bed plate"}));
  QCOMPARE(valueText(2, axis, {}), QString("bed plate"));
}

// The usual 1-2-5 steps, worked by hand.
void TestAxisTicks::marksAreRound_data() {
  QTest::addColumn<double>("from");
  QTest::addColumn<double>("to");
  QTest::addColumn<int>("maximum");
  QTest::addColumn<QStringList>("labels");
  QTest::newRow("tens") << 0.0 << 24.0 << 6 << QStringList{"0", "5", "10", "15", "20"};
  QTest::newRow("tenths") << 0.69 << 1.02 << 4 << QStringList{"0.7", "0.8", "0.9", "1.0"};
  QTest::newRow("hundredths") << 0.0 << 0.2 << 5 << QStringList{"0.00", "0.05", "0.10", "0.15", "0.20"};
  QTest::newRow("hundreds") << 0.0 << 999.0 << 3 << QStringList{"0", "500"};
  QTest::newRow("nothing") << 1.0 << 1.0 << 5 << QStringList{};
}

void TestAxisTicks::marksAreRound() {
  QFETCH(double, from);
  QFETCH(double, to);
  QFETCH(int, maximum);
  QFETCH(QStringList, labels);
  QCOMPARE(evenTicks({from, to}, maximum).labels, labels);
}

void TestAxisTicks::neverMoreThanAsked() {
  for (int maximum = 2; maximum < 13; ++maximum) {
    for (double size = 1e-7; size < 1e9; size *= 1.37) {
      const Ticks ticks = evenTicks({-0.31 * size, 0.69 * size}, maximum);
      QVERIFY(static_cast<int>(ticks.at.size()) <= maximum);
      QVERIFY(!ticks.at.empty());
      QVERIFY(ticks.at.front() >= -0.31 * size * (1 + 1e-9) && ticks.at.back() <= 0.69 * size * (1 + 1e-9));
      QCOMPARE(static_cast<int>(ticks.at.size()), static_cast<int>(ticks.labels.size()));
    }
  }
}

void TestAxisTicks::minusSign() {
  QCOMPARE(evenTicks({-0.05, 0.05}, 3).labels, (QStringList{"−0.05", "0.00", "0.05"}));
}

void TestAxisTicks::longFiguresArePowers() {
  QCOMPARE(evenTicks({0, 1.2e6}, 4).labels, (QStringList{"0", "5·10⁵", "1.0·10⁶"}));
  QCOMPARE(evenTicks({-2e-7, 2e-7}, 3).labels, (QStringList{"−2·10⁻⁷", "0", "2·10⁻⁷"}));
}

void TestAxisTicks::decades() {
  QCOMPARE(logarithmicTicks({1, 1000}, 6).labels, (QStringList{"1", "10", "100", "1000"}));
  QCOMPARE(logarithmicTicks({0.01, 2}, 4).labels, (QStringList{"0.01", "0.1", "1"}));
  QCOMPARE(logarithmicTicks({1e-6, 1}, 4).labels, (QStringList{"10⁻⁶", "", "10⁻⁴", "", "10⁻²", "", "10⁰"}));
  QVERIFY(logarithmicTicks({0, 10}, 4).at.empty());
}

void TestAxisTicks::narrowLogarithmicRange() {
  QCOMPARE(logarithmicTicks({1, 20}, 8).labels, (QStringList{"1", "2", "5", "10", "20"}));
  QCOMPARE(logarithmicTicks({11, 14}, 4).labels, (QStringList{"11", "12", "13", "14"}));
}

void TestAxisTicks::titlesCarryUnits() {
  QCOMPARE(axisTitle({"flow", "mm3/s"}), QString("flow, mm³/s"));
  QCOMPARE(axisTitle({"delivered / commanded", "1"}), QString("delivered / commanded"));
}

void TestAxisTicks::valuesHaveTwoMoreDecimals() {
  const Axis flow{"flow", "mm3/s"};
  QCOMPARE(valueText(12.3456, flow, evenTicks({0, 24}, 6)), QString("12.35\u00a0mm³/s"));
  QCOMPARE(valueText(-0.95401, {"delivered", "1"}, evenTicks({-1, 0}, 6)), QString("−0.954"));
  QCOMPARE(valueText(123456.0, {"density", "1", true}, logarithmicTicks({1, 1e7}, 6)), QString("123456"));
  QCOMPARE(valueText(0.0000123, {"density", "1", true}, logarithmicTicks({1e-6, 1}, 6)),
           QString("1.230·10⁻⁵"));
}

FETTLE_TEST(TestAxisTicks)
#include "test_axis_ticks.moc"
