#include <QTest>

#include "tests/core/example/spool_weight.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected values: arithmetic by hand, as said beside them.
class TestSpoolWeight : public QObject {
  Q_OBJECT

  Json m_inputs;

  static StepResult evaluated(const Json& inputs) {
    StepContext context;
    context.sheet.filament = 1.75;
    return evaluatedOrEnd(spoolWeightStep(), inputs, context);
  }

 private slots:
  void init() {
    m_inputs = {{"empty_g", 200},
                {"weighings",
                 {{{"spool", "Grey 1"}, {"mass_g", 612.4}},
                  {{"spool", "Grey 1"}, {"mass_g", 612.6}},
                  {{"spool", "Red"}, {"mass_g", 300}}}}};
  }

  void massAndLengthAreLeft() {
    const StepResult result = evaluated(m_inputs);
    QVERIFY(result.complete);
    QCOMPARE(valueOf(result, "grey_1.mass_g"), 412.5);  // (612.4 + 612.6)/2 − 200
    // 412.5 g / 1.24 g/cm³ / (π/4 · 1.75² mm²) = 138.30 m
    QVERIFY(std::abs(valueOf(result, "grey_1.length_m") - 138.30) < 0.01);
    QCOMPARE(verdictOf(result, "total_g"), Verdict::pass);  // 512.5 g, 500 wanted, U below 0.1 g
    QCOMPARE(undescribed(spoolWeightStep(), result), QString());
    QCOMPARE(unsoundCharts(result), QString());
  }

  void aRefusalWithholdsItsOwnSpoolOnly() {
    m_inputs["weighings"][1]["mass_g"] = 700;
    const StepResult result = evaluated(m_inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("weighings[1]"));
    QVERIFY(!result.quantity("grey_1.mass_g"));
    QCOMPARE(valueOf(result, "red.mass_g"), 100.0);
  }

  void aBadCellLeavesOutItsRow() {
    m_inputs["weighings"][2]["mass_g"] = "eighty";
    const StepResult result = evaluated(m_inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("weighings[3].mass_g"));
    QVERIFY(!result.find("red.mass_g"));
    QVERIFY(result.quantity("grey_1.mass_g"));
  }

  void whatIsBlankIsWanted() {
    m_inputs.erase("empty_g");
    const StepResult result = evaluated(m_inputs);
    QVERIFY(!result.complete);
    QCOMPARE(result.missing, std::vector<std::string>{"empty_g"});
    QCOMPARE(result.next.front().field, std::string("empty_g"));
    QCOMPARE(result.find("red.mass_g")->lacks, std::vector<std::string>{"empty_g"});
  }
};

FETTLE_TEST(TestSpoolWeight)
#include "test_spool_weight.moc"
