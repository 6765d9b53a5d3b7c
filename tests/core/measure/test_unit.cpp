#include <QTest>

#include "core/measure/header_words.h"
#include "core/measure/unit.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Conversion factors: SI prefixes and standard gravity 9.80665 m/s² exactly (3rd CGPM 1901, ISO 80000-3);
/// 0 °C = 273.15 K (ISO 80000-5).
class TestUnit : public QObject {
  Q_OBJECT
 private slots:
  void converts_data() {
    QTest::addColumn<double>("value");
    QTest::addColumn<QByteArray>("from");
    QTest::addColumn<QByteArray>("to");
    QTest::addColumn<double>("expected");
    const auto row = [](double value, const char* from, const char* to, double expected) {
      QTest::addRow("%g %s to %s", value, from, to)
          << value << QByteArray(from) << QByteArray(to) << expected;
    };
    row(632, "us", "s", 0.000632);
    row(5000.632, "ms", "s", 5.000632);
    row(1.5, "min", "s", 90);
    row(1, "gn", "mm/s2", 9806.65);
    row(25, "mgn", "mm/s2", 245.16625);
    row(1, "g", "mm/s2", 9806.65);
    row(1000, "mg", "mm/s2", 9806.65);
    row(1, "g", "m/s2", 9.80665);
    row(9.80665, "m/s2", "g", 1);
    row(1, "kg", "g", 1000);
    row(500, "mg", "g", 0.5);
    row(0, "K", "C", -273.15);
    row(25, "C", "K", 298.15);
    row(42, "%", "1", 0.42);
    row(0.42, "1", "%", 42);
    row(2, "mm/m", "mm/100mm", 0.2);
    row(1240, "kg/m3", "g/cm3", 1.24);
    row(3, "mm3/s", "mm3/s", 3);
    row(1.2, "A", "mA", 1200);
    row(7, "clock", "s", 7);
  }
  void converts() {
    QFETCH(double, value);
    QFETCH(QByteArray, from);
    QFETCH(QByteArray, to);
    QFETCH(double, expected);
    const auto result = convert(value, from.toStdString(), to.toStdString());
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    QVERIFY(qFuzzyCompare(1 + *result, 1 + expected));
  }

  void refusesWhatCannotBeConverted() {
    QVERIFY(convert(1, "V", "mm/s2").error().find("mm/s") != string::npos);
    QVERIFY(convert(1, "counts", "mm").error().find("\"counts\"") != string::npos);
    QVERIFY(convert(1, "mm", "counts").error().find("\"counts\"") != string::npos);
    QVERIFY(!convert(1, "g", "s").has_value());
  }

  void knowsSpellings_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("key");
    const auto row = [](const char* text, const char* key) {
      QTest::addRow("%s", text) << QByteArray(text) << QByteArray(key);
    };
    row("[ms]", "ms");
    row("\u00b5s", "us");
    row("\u03bcs", "us");
    row("mm/s\u00b2", "mm/s2");
    row("m/s^2", "m/s2");
    row("mm\u00b7s\u207b\u00b2", "mm/s2");
    row("\u00b0C", "C");
    row("degC", "C");
    row("(%)", "%");
    row("percent", "%");
    row("\u03a9", "ohm");
    row("\u2126", "ohm");
    row("mm\u00b3/s", "mm3/s");
    row("hh:mm:ss", "clock");
    row("Seconds", "s");
    row("hz", "Hz");
    row("g", "g");
    row("gn", "gn");
    row("\u00b0", "deg");
    row("J/(g K)", "J/(g K)");
    row("1/\u00b0C", "1/C");
    row("1/(\u00b0C\u00b7s)", "1/(C s)");
    row("s/\u00b0C", "s/C");
    row("mm\u00b3/mm", "mm3/mm");
  }
  void knowsSpellings() {
    QFETCH(QByteArray, text);
    QFETCH(QByteArray, key);
    const auto unit = unitFromText(text.toStdString());
    QVERIFY(unit.has_value());
    QCOMPARE(string(unit->key), key.toStdString());
  }

  void theColumnDecidesWhatGramsAre() {
    QCOMPARE(string(unitFromText("g", Dimension::acceleration)->key), string("gn"));
    QCOMPARE(string(unitFromText("[mg]", Dimension::acceleration)->key), string("mgn"));
    QCOMPARE(string(unitFromText("g", Dimension::mass)->key), string("g"));
    QVERIFY(!unitFromText("g", Dimension::length));
    QVERIFY(!unitFromText("V", Dimension::acceleration));
    QVERIFY(!unitFromText("furlong"));
    QVERIFY(!unitFromText(""));
  }

  void everyKeyIsItsOwnSpellingAndConvertsBack() {
    for (int d = 0; d <= static_cast<int>(Dimension::derivativeGain); ++d) {
      const auto dimension = static_cast<Dimension>(d);
      const auto units = unitsOf(dimension);
      QVERIFY(!units.empty());
      QCOMPARE(units.front().multiply / units.front().divide, 1.0);
      for (const auto& unit : units) {
        QCOMPARE(string(unitFromText(unit.key, dimension)->key), string(unit.key));
        QVERIFY(qFuzzyCompare(convert(convert(3.7, unit, units.front()), units.front(), unit), 3.7));
        QCOMPARE(string(unitFromText(displayUnit(unit.key), dimension).value_or(units.front()).key),
                 string(unit.key));
      }
    }
  }

  void showsUnits() {
    QCOMPARE(displayUnit("mm3/s"), string("mm\u00b3/s"));
    QCOMPARE(displayUnit("mm/s2"), string("mm/s\u00b2"));
    QCOMPARE(displayUnit("C"), string("\u00b0C"));
    QCOMPARE(displayUnit("C/min"), string("\u00b0C/min"));
    QCOMPARE(displayUnit("ohm"), string("\u03a9"));
    QCOMPARE(displayUnit("us"), string("\u00b5s"));
    QCOMPARE(displayUnit("1"), string(""));
    QCOMPARE(displayUnit("%"), string("%"));
    QCOMPARE(displayUnit("mm/100mm"), string("mm/100\u00a0mm"));
    QCOMPARE(displayUnit("mm3/mm"), string("mm\u00b3/mm"));
    QCOMPARE(displayUnit("mm/K"), string("mm/K"));
    QCOMPARE(displayUnit("1/C"), string("1/\u00b0C"));
    QCOMPARE(displayUnit("1/(C s)"), string("1/(\u00b0C\u00b7s)"));
    QCOMPARE(displayUnit("s/C"), string("s/\u00b0C"));
    QCOMPARE(displayUnit("J/(g K)"), string("J/(g\u00b7K)"));
    QCOMPARE(displayUnit("(mm/s2)2/Hz"), string("(mm/s\u00b2)\u00b2/Hz"));
    QCOMPARE(unitWords(Dimension::acceleration), string("mm/s2, m/s2, gn, mgn"));
  }

  void takesHeadersApart_data() {
    QTest::addColumn<QByteArray>("header");
    QTest::addColumn<QByteArray>("name");
    QTest::addColumn<QByteArray>("unit");
    const auto row = [](const char* header, const char* name, const char* unit) {
      QTest::addRow("%s", header) << QByteArray(header) << QByteArray(name) << QByteArray(unit);
    };
    row("t[us]", "t", "us");
    row("x[mg]", "x", "mg");
    row("[ms]", "", "ms");
    row("temperature (C)", "temperature", "C");
    row("output (%)", "output", "%");
    row("time_s", "time", "s");
    row("ax_mm_s2", "ax", "mm/s2");
    row("x mm", "x", "mm");
    row("flow mm3/s", "flow", "mm3/s");
    row("flow_mm3_s", "flow", "mm3/s");
    row("commanded volume mm3", "commanded volume", "mm3");
    row("rise C per min", "rise", "C/min");
    row("t / ms", "t", "ms");
    row("t/ms", "t", "ms");
    row("a (mm/s\u00b2)", "a", "mm/s\u00b2");
    row("temp [\u00b0C]", "temp", "\u00b0C");
    row("ax [counts]", "ax", "counts");
    row("height (front)", "height (front)", "");
    row("steps_per_mm", "steps", "1/mm");
    row("value_per_kg", "value_per_kg", "");
    row("ax", "ax", "");
    row("Zeit", "Zeit", "");
    row("mm/s", "mm/s", "");
    row("", "", "");
    row("[]", "[]", "");
    row("_s", "_s", "");
  }
  void takesHeadersApart() {
    QFETCH(QByteArray, header);
    QFETCH(QByteArray, name);
    QFETCH(QByteArray, unit);
    const auto words = splitHeader(header.toStdString());
    QCOMPARE(words.name, name.toStdString());
    QCOMPARE(words.unit, unit.toStdString());
  }

  void theWantedDimensionSettlesDoubtfulHeaders() {
    QCOMPARE(splitHeader("part A").unit, string("A"));
    QCOMPARE(splitHeader("part A", Dimension::length).unit, string(""));
    QCOMPARE(splitHeader("seconds", Dimension::time).unit, string("seconds"));
    QCOMPARE(splitHeader("ax g", Dimension::acceleration).unit, string("g"));
  }
};

FETTLE_TEST(TestUnit)
#include "test_unit.moc"
