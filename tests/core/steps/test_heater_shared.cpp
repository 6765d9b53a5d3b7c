#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/described.h"
#include "tests/support/files_in.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Logs of an independent simulation, kept beside the project, through the whole path: file, intake, step.
/// The truth stands in the README beside them.
class TestHeaterShared : public QObject {
  Q_OBJECT

  tl::expected<StepResult, std::string> evaluate(const char* file, Json inputs) {
    IntakeFiles files = filesIn(outsideFile("inputs"));
    StepContext context;
    context.subject = "hot_end";
    context.sheet.hotEndMax = 300;
    inputs["log"] = {{"file", file}};
    return findStep("heater-control")->evaluate(inputs, context, files);
  }

 private slots:
  void init() { SKIP_WITHOUT_OUTSIDE_FILE(outsideFile("inputs/hotend-step.csv")); }

  // True: gain 520 °C, second order of 140 and 5 s behind 3.5 s; a first-order fit sees a dead time of 7 to
  // 10 s. To the digits shown by SciPy 1.10 curve_fit on the same rows.
  void stepTest() {
    const auto result = evaluate("hotend-step.csv", {{"mode", "step"}, {"target_C", 215}});
    QVERIFY2(result, result ? "" : result.error().c_str());
    VERIFY_NEAR(valueOf(*result, "hot_end.gain_C"), 520, 0.02 * 520);
    VERIFY_NEAR(valueOf(*result, "hot_end.tau_s"), 140, 0.04 * 140);
    VERIFY_NEAR(valueOf(*result, "hot_end.theta_s"), 8.5, 1.5);
    VERIFY_NEAR(valueOf(*result, "hot_end.gain_C"), 519.8020882, 2e-3);
    VERIFY_NEAR(valueOf(*result, "hot_end.tau_s"), 140.41057505, 2e-3);
    VERIFY_NEAR(valueOf(*result, "hot_end.theta_s"), 8.38835005, 2e-3);
    standardError(*result, "hot_end.tau_s", 0.03666523);
    standardError(*result, "hot_end.theta_s", 0.02544234);
    QCOMPARE(undescribed(*findStep("heater-control"), *result), QString());
    QCOMPARE(unsoundCharts(*result), QString());
    for (const auto& finding : result->findings) {
      QVERIFY2(finding.severity == Severity::note, finding.text.c_str());
    }
  }

  static void standardError(const StepResult& result, const char* id, double expected) {
    const Quantity* quantity = result.quantity(id);
    QVERIFY2(quantity && quantity->u && std::abs(*quantity->u - expected) < 0.01 * expected, id);
  }

  void holdTest() {
    const auto result = evaluate("hotend-hold.csv", {{"mode", "hold"}});
    QVERIFY2(result, result ? "" : result.error().c_str());
    VERIFY_NEAR(valueOf(*result, "hot_end.overshoot_C"), 0.14, 1e-9);
    VERIFY_NEAR(valueOf(*result, "hot_end.settling_s"), 118.0, 1e-9);
    QCOMPARE(result->verdict(), Verdict::pass);
    QCOMPARE(undescribed(*findStep("heater-control"), *result), QString());
  }
};

FETTLE_TEST(TestHeaterShared)
#include "test_heater_shared.moc"
