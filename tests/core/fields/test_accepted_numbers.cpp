#include <QTest>

#include "core/fields/accepted_numbers.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// Expected: the wording of accepted_numbers.h.
class TestAcceptedNumbers : public QObject {
  Q_OBJECT

 private slots:
  void words() {
    QCOMPARE((AcceptedNumbers{0.1, 100, false, "C"}.words()),
             std::string("a number from 0.1 to 100 in °C"));
    QCOMPARE((AcceptedNumbers{2, 100, true, "1"}.words()), std::string("a whole number from 2 to 100"));
    QCOMPARE((AcceptedNumbers{1, {}, false, "mm"}.words()), std::string("a number of 1 or more in mm"));
    QCOMPARE((AcceptedNumbers{{}, {}, false, ""}.words()), std::string("a number"));
  }

  void bounds() {
    const AcceptedNumbers counts{2, 100, true, "1"};
    QVERIFY(counts.has(2) && counts.has(100));
    QVERIFY(!counts.has(1) && !counts.has(101) && !counts.has(2.5));
    QVERIFY(AcceptedNumbers{}.has(-1e9));
  }

  void aWordWhereANumberIsNeeded() {
    QCOMPARE(wordForNumber("flow_factor", "all", "1"),
             std::string("As found, flow_factor: \"all\" is not a number; a number is needed."));
  }
};

FETTLE_TEST(TestAcceptedNumbers)
#include "test_accepted_numbers.moc"
