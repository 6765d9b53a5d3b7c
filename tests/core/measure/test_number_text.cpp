#include <QTest>
#include <algorithm>
#include <cstdlib>
#include <random>
#include <string>

#include "core/measure/number_text.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// Expected values: what the digits say (the double nearest to the decimal number).
class TestNumberText : public QObject {
  Q_OBJECT
 private slots:
  void readsOneNumber_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<char>("decimalSign");
    QTest::addColumn<double>("value");
    QTest::newRow("integer") << QByteArray("42") << '.' << 42.0;
    QTest::newRow("point") << QByteArray("-0.125") << '.' << -0.125;
    QTest::newRow("comma") << QByteArray("-0,125") << ',' << -0.125;
    QTest::newRow("plus") << QByteArray("+0.002") << '.' << 0.002;
    QTest::newRow("minus sign") << QByteArray("\u22123.5") << '.' << -3.5;
    QTest::newRow("blanks") << QByteArray(" \t 7 \r") << '.' << 7.0;
    QTest::newRow("no-break space") << QByteArray("\u00a07\u00a0") << '.' << 7.0;
    QTest::newRow("exponent") << QByteArray("1.5E-3") << '.' << 0.0015;
    QTest::newRow("no digit in front") << QByteArray(".5") << '.' << 0.5;
    QTest::newRow("nothing behind") << QByteArray("5.") << '.' << 5.0;
  }
  void readsOneNumber() {
    QFETCH(QByteArray, text);
    QFETCH(char, decimalSign);
    QFETCH(double, value);
    const auto read = numberFromText(text.toStdString(), decimalSign);
    QVERIFY(read.has_value());
    QCOMPARE(*read, value);
  }

  // The C library reads to the nearest double, as IEEE 754 has it.
  void decimalsAreTheNearestDoubles() {
    std::mt19937_64 generator(11);
    std::uniform_int_distribution<int> digitCount(1, 19), signs(0, 2);
    std::uniform_int_distribution<int> digit('0', '9');
    for (int i = 0; i < 20000; ++i) {
      std::string text(static_cast<std::size_t>(digitCount(generator)), '0');
      std::generate(text.begin(), text.end(), [&] { return static_cast<char>(digit(generator)); });
      text.insert(std::uniform_int_distribution<std::size_t>(0, text.size())(generator), ".");
      text.insert(0, signs(generator) == 0 ? "-" : "");
      text += i % 50 == 0 ? "e-7" : "";
      double value = 0;
      QVERIFY2(scanNumber(text.data(), text.data() + text.size(), '.', value) == text.data() + text.size(),
               text.c_str());
      QVERIFY2(value == std::strtod(text.c_str(), nullptr), text.c_str());
    }
  }

  void refusesEverythingElse_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<char>("decimalSign");
    for (const char* text :
         {"",         " ",     "one",   "nan", "NaN",   "-nan",   "inf",      "-inf",
          "infinity", "1,5",   "1 000", "1e",  "1e999", "--1",    "+-1",      "0x10",
          "12mm",     "1.2.3", "-",     "+",   ".",     "\u2212", "\u2212-1", "\u2212nan"}) {
      QTest::newRow(text) << QByteArray(text) << '.';
    }
    QTest::newRow("point where a comma is meant") << QByteArray("1.5") << ',';
  }
  void refusesEverythingElse() {
    QFETCH(QByteArray, text);
    QFETCH(char, decimalSign);
    QVERIFY(!numberFromText(text.toStdString(), decimalSign).has_value());
  }

  void keyboardTakesCommaAndPoint() {
    QCOMPARE(numberFromKeyboard("1,5").value(), 1.5);
    QCOMPARE(numberFromKeyboard("1.5").value(), 1.5);
    QCOMPARE(numberFromKeyboard(" -12 ").value(), -12.0);
  }

  void keyboardRefusesGroupedThousands_data() {
    QTest::addColumn<QByteArray>("text");
    for (const char* text : {"1.234,5", "1,234.5", "1,234,567", "1.234.567"}) {
      QTest::newRow(text) << QByteArray(text);
    }
  }
  void keyboardRefusesGroupedThousands() {
    QFETCH(QByteArray, text);
    const auto read = numberFromKeyboard(text.toStdString());
    QVERIFY(!read.has_value());
    QVERIFY(read.error().find(text.toStdString()) != std::string::npos);
    QVERIFY(read.error().find("thousands") != std::string::npos);
  }

  void keyboardSaysWhatIsWrong() {
    QVERIFY(numberFromKeyboard("abc").error().find("\"abc\" is not a number") == 0);
    QVERIFY(!numberFromKeyboard("").error().empty());
    QVERIFY(!numberFromKeyboard("nan").has_value());
    QVERIFY(numberFromKeyboard("1.2.x").error().find("thousands") == std::string::npos);
  }
};

FETTLE_TEST(TestNumberText)
#include "test_number_text.moc"
