#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "core/steps/heater_control.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/heater_logs.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Step test, rules and simulation.
class TestHeaterControl : public QObject {
  Q_OBJECT
  const Step& step = *findStep("heater-control");

 private slots:
  void everythingIsDescribed() {
    auto inputs = cleanStep();
    inputs.outputFullScale = 255;
    inputs.period = 0.25;
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(undescribed(step, result), QString());
    QCOMPARE(unsoundCharts(result), QString());
    for (const char* id : {"response", "residuals", "duty", "rules"}) {
      QVERIFY2(chartOf(result, id) && !chartOf(result, id)->isEmpty(), id);
    }
    QCOMPARE(chartOf(result, "rules")->series.size(), std::size_t(4));
    QCOMPARE(chartOf(result, "response")->series.size(), std::size_t(2));
    QCOMPARE(chartOf(result, "response")->about, std::string("Hot end"));
  }

  // Built without scatter: the answer is exact, and nothing is found amiss.
  void cleanStepIsExact() {
    const auto result = evaluate(cleanStep(), sheetOf(300));
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    VERIFY_NEAR(valueOf(result, "hot_end.tau_s"), 120, 1e-6);
    VERIFY_NEAR(valueOf(result, "hot_end.theta_s"), 6, 1e-6);
    for (const auto& finding : result.findings) {
      QVERIFY2(finding.severity == Severity::note, finding.text.c_str());
    }
    QCOMPARE(findingOf(result, "runaway-guard")->see, std::string("power-up"));  // where it is proved
    QVERIFY(!result.quantity("hot_end.guard_rise_C"));
    QVERIFY(!result.find("hot_end.guard_rise_C")->why.empty());
  }

  // By hand for gain 450, tau 120, theta 6. SIMC: 120/(450·12) = 0.0222222, Ti = min(120, 48) = 48.
  // Ziegler-Nichols: 1.2·120/(450·6) = 0.0533333, 12, 3. AMIGO: (0.2 + 0.45·20)/450 = 0.0204444,
  // 6·(2.4 + 96)/(6 + 12) = 32.8, 0.5·6·120/(1.8 + 120) = 2.955665. Ku, Pu by SciPy 1.10 brentq of
  // 6w + atan(120w) = π: 0.0712345477, 23.5325698; Tyreus-Luyben Ku/2.2, 2.2 Pu, Pu/6.3.
  void rulesSideBySide() {
    auto inputs = cleanStep();
    inputs.outputFullScale = 255;
    inputs.period = 0.25;
    const auto result = evaluate(inputs, sheetOf(300));
    const auto value = [&](const char* id) { return valueOf(result, id); };
    VERIFY_NEAR(value("hot_end.simc.Kc"), 0.02222222, 1e-7);
    VERIFY_NEAR(value("hot_end.simc.Ti_s"), 48, 1e-6);
    VERIFY_NEAR(value("hot_end.simc.Td_s"), 0, 1e-12);
    VERIFY_NEAR(value("hot_end.simc.Ki"), 0.02222222 / 48, 1e-9);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Kc"), 0.05333333, 1e-7);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Ki"), 0.05333333 / 12, 1e-8);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Kd"), 0.16, 1e-7);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Kp_at_full_scale"), 13.6, 1e-5);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Ki_per_sample"), 13.6 / 12 * 0.25, 1e-6);
    VERIFY_NEAR(value("hot_end.ziegler_nichols.Kd_per_sample"), 13.6 * 3 / 0.25, 1e-4);
    VERIFY_NEAR(value("hot_end.amigo.Kc"), 0.02044444, 1e-7);
    VERIFY_NEAR(value("hot_end.amigo.Ti_s"), 32.8, 1e-6);
    VERIFY_NEAR(value("hot_end.amigo.Td_s"), 2.955665, 1e-6);
    VERIFY_NEAR(value("hot_end.Ku"), expectedKu, 1e-7);
    VERIFY_NEAR(value("hot_end.Pu"), expectedPu, 1e-5);
    VERIFY_NEAR(value("hot_end.tyreus_luyben.Kc"), expectedKu / 2.2, 1e-7);
    VERIFY_NEAR(value("hot_end.tyreus_luyben.Ti_s"), 2.2 * expectedPu, 1e-4);
    VERIFY_NEAR(value("hot_end.tyreus_luyben.Td_s"), expectedPu / 6.3, 1e-5);
    inputs.closedLoopTime = 24;  // 120/(450·30), min(120, 120)
    const auto calm = evaluate(inputs, sheetOf(300));
    VERIFY_NEAR(valueOf(calm, "hot_end.simc.Kc"), 0.00888889, 1e-7);
    VERIFY_NEAR(valueOf(calm, "hot_end.simc.Ti_s"), 120, 1e-5);
    // With Ti = tau the loop is first order of 400 s behind the dead time: 400·ln(190) s to 1 °C,
    // but for the dead time's shift of the pole by about 1 %.
    inputs.closedLoopTime = 400;
    VERIFY_NEAR(valueOf(evaluate(inputs, sheetOf(300)), "hot_end.simc.settling_s"), 400 * std::log(190),
                20);
  }

  // Partial derivatives by hand: Td = theta/2 carries half the u of theta, Ti = 2 theta twice; of SIMC
  // Ti = 4·(theta + theta) carries eight times.
  void uncertaintyGoesIntoTheRules() {
    auto inputs = cleanStep();
    const auto answer = answerTo(0.2, 150, 450, 120, 6);
    inputs.log = heaterLog(
        600, 0.5,
        {[&](double t) { return answer(t) + 0.2 * std::sin(2.8 * t * t); }, dutyStep(0.25, 0.45), {}});
    const auto result = evaluate(inputs, sheetOf(300));
    const Quantity& theta = *result.quantity("hot_end.theta_s");
    QVERIFY(theta.u && *theta.u > 0.01 && *theta.u < 0.5);
    QCOMPARE(theta.dof, 1201.0 - 4);
    VERIFY_NEAR(*result.quantity("hot_end.ziegler_nichols.Td_s")->u, *theta.u / 2, 1e-6);
    VERIFY_NEAR(*result.quantity("hot_end.ziegler_nichols.Ti_s")->u, 2 * *theta.u, 1e-6);
    VERIFY_NEAR(*result.quantity("hot_end.simc.Ti_s")->u, 8 * *theta.u, 1e-5);
    VERIFY_NEAR(theta.value, 6, 3 * *theta.u);
  }

  // Reference written for this test in NumPy 1.24: the continuous loop in steps of 2 ms, states temperature
  // (exact for a held duty), integral (held while saturated and driven further) and derivative filter Td/10
  // (Euler); 25 to 215 °C, a load of 0.1 from the later of 900 s and 300 s after settling.
  void simulatedTable() {
    auto inputs = cleanStep();
    const auto result = evaluate(inputs, sheetOf(300));
    for (const auto& expected : expectedLoops) {
      const std::string id = std::string("hot_end.") + expected.rule;
      VERIFY_NEAR(valueOf(result, id + ".overshoot_C"), expected.overshoot, 0.05);
      VERIFY_NEAR(valueOf(result, id + ".settling_s"), expected.settling, 0.5);
      VERIFY_NEAR(valueOf(result, id + ".dip_C"), expected.dip, 0.02);
    }
    QCOMPARE(result.settings.size(), std::size_t(3));
    QCOMPARE(result.settings[0].id, std::string("hot_end.Kp"));
  }

  // Of the rules within 2 °C of overshoot the smallest dip; recomputed from the table itself.
  void aRuleIsProposed() {
    auto inputs = cleanStep();
    inputs.outputFullScale = 100;
    const auto result = evaluate(inputs, sheetOf(300));
    std::string best;
    for (const char* rule : {"simc", "ziegler_nichols", "tyreus_luyben", "amigo"}) {
      const std::string id = std::string("hot_end.") + rule;
      const bool gentle = valueOf(result, id + ".overshoot_C") <= 2;
      const double dip = valueOf(result, id + ".dip_C");
      if (gentle && (best.empty() || dip < valueOf(result, "hot_end." + best + ".dip_C"))) {
        best = rule;
      }
    }
    QVERIFY(!best.empty());
    const auto text = std::find_if(result.texts.begin(), result.texts.end(),
                                   [](const auto& t) { return t.id == "hot_end.proposed"; });
    QVERIFY(text != result.texts.end());
    QCOMPARE(text->text, best);
    QCOMPARE(*result.settings[0].proposed.number, valueOf(result, "hot_end." + best + ".Kp_at_full_scale"));
    QCOMPARE(*result.settings[2].proposed.number, valueOf(result, "hot_end." + best + ".Kd_at_full_scale"));
    QCOMPARE(result.next.front().field, std::string("log"));  // of the hold that follows
    QCOMPARE(result.next.front().count, std::optional(1));
  }

  void targetBeyondReach() {
    auto inputs = cleanStep();
    inputs.target = 480;
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(findingOf(result, "target-unreachable")->severity, Severity::fault);
    QCOMPARE(findingOf(result, "target-unreachable")->at, std::string("target_C"));
    QVERIFY(!result.quantity("hot_end.simc.overshoot_C") && result.find("hot_end.simc.overshoot_C"));
    QVERIFY(result.quantity("hot_end.simc.Kc") && result.settings.empty());
    inputs.target.reset();
    const auto without = evaluate(inputs, sheetOf(300));
    QVERIFY(!without.quantity("hot_end.simc.dip_C") && without.settings.empty());
    QCOMPARE(without.find("hot_end.simc.dip_C")->lacks, std::vector<std::string>{"target_C"});
    QCOMPARE(without.missing, std::vector<std::string>{"target_C"});
  }

  void typedModelNeedsNoLog() {
    const Json typed{{"mode", "step"}, {"gain_C", 450}, {"tau_s", 120}, {"theta_s", 6}, {"target_C", 215}};
    StepContext context;
    context.subject = "bed";
    const auto result = evaluateJson(step, typed, context);
    QVERIFY2(result, result ? "" : result.error().c_str());
    QVERIFY(result->complete);
    VERIFY_NEAR(valueOf(*result, "bed.simc.Kc"), 0.02222222, 1e-7);
    QVERIFY(!result->quantity("bed.simc.Kc")->u);
    Json half = typed;
    half.erase("tau_s");
    half["heater"] = "hot_end";
    const auto begun = evaluateJson(step, half);
    QCOMPARE(begun->missing, std::vector<std::string>{"tau_s"});
    QCOMPARE(begun->next.front().field, std::string("tau_s"));
    VERIFY_NEAR(valueOf(*begun, "hot_end.gain_C"), 450, 1e-12);
    half["tau_s"] = 120;
    half["theta_s"] = 0;
    const auto immediate = evaluateJson(step, half);
    QVERIFY(immediate && immediate->find("hot_end.simc.Kc") && !immediate->quantity("hot_end.simc.Kc"));
    half["tau_c_s"] = 10;  // 120/(450·10)
    VERIFY_NEAR(valueOf(*evaluateJson(step, half), "hot_end.simc.Kc"), 0.02666667, 1e-7);
  }

  void subjectAndEntryDiffer() {
    auto context = sheetOf(300);
    context.subject = "bed";
    const auto result = evaluate(cleanStep(), context);
    QVERIFY(findingOf(result, "other-heater"));
    QVERIFY(result.quantity("hot_end.gain_C"));
  }

  void incompleteSaysWhatIsMissing() {
    const auto empty = evaluateJson(step, {{"mode", "step"}});
    QCOMPARE(empty->missing, std::vector<std::string>{"heater"});
    QCOMPARE(evaluateJson(step, Json::object())->next.front().field, std::string("heater"));
    for (const char* mode : {"step", "relay", "hold"}) {
      const auto begun = evaluateJson(step, {{"mode", mode}, {"heater", "bed"}});
      QCOMPARE(begun->missing, std::vector<std::string>{"log"});
      QVERIFY(!begun->complete);
      QCOMPARE(begun->next.front().field, std::string("log"));
      QCOMPARE(begun->next.front().count, std::optional(1));
    }
  }

  // Without a highest temperature two checks are not made, and that is said; the fit needs none.
  void withoutAMaximumTheFitIsMade() {
    const auto result = evaluate(cleanStep(), {});
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    QCOMPARE(findingOf(result, "limit-not-checked")->at, std::string("max_C"));
    QVERIFY(result.missing.empty());
    QVERIFY(!findingOf(evaluate(cleanStep(), sheetOf(300)), "limit-not-checked"));
    auto chamber = cleanStep();
    chamber.heater = "chamber";  // the sheet has no maximum for it
    QVERIFY(findingOf(evaluate(chamber, sheetOf(300)), "limit-not-checked"));
    chamber.maximum = 250;
    QVERIFY(findingOf(evaluate(chamber, sheetOf(300)), "over-limit"));
  }

  // A log without duty takes the typed step.
  void typedStepOfDuty() {
    auto inputs = cleanStep();
    inputs.log = heaterLog(600, 0.5, {answerTo(0.2, 150, 450, 120, 6), {}, {}});
    const auto missing = evaluate(inputs, sheetOf(300)).missing;
    QCOMPARE(missing, (std::vector<std::string>{"step_at_s", "duty_before", "duty_after"}));
    inputs.stepAt = 30;
    inputs.dutyBefore = 0.25;
    inputs.dutyAfter = 0.45;
    VERIFY_NEAR(valueOf(evaluate(inputs, sheetOf(300)), "hot_end.gain_C"), 450, 1e-6);
    inputs.dutyAfter = 0.25;
    QCOMPARE(refusedAt(inputs, sheetOf(300)), std::string("duty_after"));
  }

  // A step down from a steady state is as good: the same numbers.
  void stepDown() {
    auto inputs = heaterInputs(
        "step", heaterLog(600, 0.5, {answerTo(-0.2, 240, 450, 120, 6), dutyStep(0.45, 0.25), {}}));
    const auto result = evaluate(inputs, sheetOf(300));
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    QVERIFY(!findingOf(result, "falling"));
  }

  void failedTests() {
    auto inputs = cleanStep();
    inputs.log = heaterLog(600, 0.5, {[](double) { return 150.0; }, dutyStep(0.25, 0.45), {}});
    const auto still = evaluate(inputs, sheetOf(300));
    QCOMPARE(findingOf(still, "no-rise")->severity, Severity::fault);
    QVERIFY(!still.quantity("hot_end.gain_C") && !still.find("hot_end.simc.Kc"));
    inputs.log = heaterLog(600, 0.5, {answerTo(-0.2, 150, 450, 120, 6), dutyStep(0.25, 0.45), {}});
    QCOMPARE(findingOf(evaluate(inputs, sheetOf(300)), "falling")->severity, Severity::fault);
  }

  void twoSteps() {
    auto inputs = cleanStep();
    const auto answer = answerTo(0.2, 150, 450, 120, 6);
    inputs.log = heaterLog(700, 0.5,
                           {[&](double t) { return t < 600 ? answer(t) : answer(t) - (t - 600); },
                            [](double t) { return t < 30    ? 0.25
                                                  : t < 600 ? 0.45
                                                            : 0.0; },
                            {}});
    const auto result = evaluate(inputs, sheetOf(300));
    QVERIFY(findingOf(result, "second-step"));
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    inputs.log = heaterLog(35, 0.5, {answer, dutyStep(0.25, 0.45), {}});  // 11 rows after the step
    QCOMPARE(refusedAt(inputs, sheetOf(300)), std::string("log"));
  }

  void cautions() {
    auto inputs = cleanStep();
    // The end is 240 °C: above 25 + 0.9·(255 − 25) = 232, the log under 0.95·255 = 242.
    const auto large = evaluate(inputs, sheetOf(255));
    QCOMPARE(findingOf(large, "step-too-large")->at, std::string("log"));
    QCOMPARE(large.next.front().field, std::string("log"));
    QVERIFY(!findingOf(evaluate(inputs, sheetOf(255)), "over-limit"));
    QCOMPARE(findingOf(evaluate(inputs, sheetOf(250)), "over-limit")->severity, Severity::fault);
    const auto answer = answerTo(0.2, 150, 450, 120, 6);
    inputs.log = heaterLog(200, 0.5, {answer, dutyStep(0.25, 0.45), {}});
    QVERIFY(findingOf(evaluate(inputs, sheetOf(300)), "step-too-short"));
    inputs.log = heaterLog(600, 5, {answer, dutyStep(0.25, 0.45), {}});
    QVERIFY(findingOf(evaluate(inputs, sheetOf(300)), "coarse-log"));
    inputs.log =
        heaterLog(600, 0.5, {[&](double t) { return answer(t) + 0.05 * t; }, dutyStep(0.25, 0.45), {}});
    QVERIFY(findingOf(evaluate(inputs, sheetOf(300)), "unsteady-start"));
    inputs.log = heaterLog(
        570, 0.5,
        {[&](double t) { return answer(t + 26); }, [](double t) { return t + 26 < 30 ? 0.25 : 0.45; }, {}});
    QVERIFY(findingOf(evaluate(inputs, sheetOf(300)), "start-not-shown"));
  }

  // No dead time in the answer, a ripple of 0.3 °C: what is fitted is no larger than its uncertainty, and a
  // gain that goes with 1/theta must not be proposed.
  void aDeadTimeNotKnownProposesNothing() {
    auto inputs = cleanStep();
    const auto answer = answerTo(0.2, 150, 450, 120, 0);
    inputs.log = heaterLog(
        600, 0.5, {[&](double t) { return answer(t) + 0.3 * std::sin(40 * t); }, dutyStep(0.25, 0.45), {}});
    const auto result = evaluate(inputs, sheetOf(300));
    QVERIFY(findingOf(result, "dead-time-unknown"));
    QVERIFY(result.settings.empty());
    QVERIFY(!result.quantity("hot_end.tyreus_luyben.dip_C"));
  }

 private:
  static constexpr double expectedKu = 0.0712345477, expectedPu = 23.5325698;
  struct ExpectedLoop {
    const char* rule;
    double overshoot, settling, dip;
  };
  static const std::vector<ExpectedLoop> expectedLoops;
};

const std::vector<TestHeaterControl::ExpectedLoop> TestHeaterControl::expectedLoops = {
    {"simc", 0, 168.294, 4.0844},
    {"ziegler_nichols", 3.5086, 95.032, 2.3731},
    {"tyreus_luyben", 0, 143.492, 2.6345},
    {"amigo", 2.5296, 142.914, 3.5976}};

FETTLE_TEST(TestHeaterControl)
#include "test_heater_control.moc"
