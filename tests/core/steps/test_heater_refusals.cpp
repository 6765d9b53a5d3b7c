#include <QTest>
#include <cmath>
#include <numbers>
#include <tuple>

#include "core/steps/catalogue.h"
#include "core/steps/heater_control.h"
#include "tests/support/described.h"
#include "tests/support/heater_logs.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// What a refused log, column, test or number costs, and what it leaves.
class TestHeaterRefusals : public QObject {
  Q_OBJECT
  const Step& step = *findStep("heater-control");

 private slots:
  // A target at or under the room's 25 °C is refused; model, rules and guard stay.
  void aRefusedTargetLeavesTheRest() {
    auto inputs = cleanStep();
    inputs.target = 24;
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(findingOf(result, "refused")->at, std::string("target_C"));
    QCOMPARE(result.find("hot_end.simc.dip_C")->lacks, std::vector<std::string>{"target_C"});
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    VERIFY_NEAR(valueOf(result, "hot_end.simc.Kc"), 0.02222222, 1e-7);  // see rulesSideBySide
    QVERIFY(result.find("hot_end.guard_rise_C") && result.settings.empty());
  }

  // At full duty throughout there is no step, but all that the guard needs: 10 s at 2 °C/s.
  void aRefusedStepLeavesTheGuard() {
    auto inputs = heaterInputs(
        "step", heaterLog(60, 0.5, {[](double t) { return 25 + 2 * t; }, [](double) { return 1.0; }, {}}));
    inputs.riseWindow = 10;
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(findingOf(result, "refused")->at, std::string("log"));
    QCOMPARE(result.find("hot_end.gain_C")->lacks, std::vector<std::string>{"log"});
    QVERIFY(!result.find("hot_end.gain_C")->quantity);
    VERIFY_NEAR(valueOf(result, "hot_end.slowest_rise_C"), 20, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.guard_rise_C"), 10, 1e-9);
    QCOMPARE(result.next.front().field, std::string("log"));
  }

  void badLogsAreRefused() {
    auto inputs = cleanStep();
    for (const auto& log : {withValue(inputs.log, "time_s", 3, 0), withValue(inputs.log, "temp_C", 3, 900),
                            heaterLog(4, 0.5, {[](double) { return 20.0; }, {}, {}})}) {
      inputs.log = log;
      const auto result = evaluate(inputs, sheetOf(300));
      QCOMPARE(countOf(result, "refused"), 1);
      QCOMPARE(findingOf(result, "refused")->at, std::string("log"));
      for (const char* id : {"hot_end.gain_C", "hot_end.theta_s", "hot_end.guard_rise_C"}) {
        QVERIFY2(result.find(id) && !result.quantity(id), id);
      }
      QVERIFY(!result.charts.empty() && result.charts.front().isEmpty());
    }
  }

  // One refused cell of a column refuses the column, not what does without it.
  void aRefusedTargetColumnLeavesTheStepTest() {
    auto inputs = cleanStep();
    LogColumns columns{answerTo(0.2, 150, 450, 120, 6), dutyStep(0.25, 0.45), [](double) { return 215.0; }};
    inputs.log = withValue(heaterLog(600, 0.5, columns), "target_C", 7, 5000);
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(findingOf(result, "refused")->at, std::string("log"));
    VERIFY_NEAR(valueOf(result, "hot_end.gain_C"), 450, 1e-6);
    QCOMPARE(result.settings.size(), std::size_t(3));
  }

  // 25 where a duty lies between 0 and 1. Typed numbers of the step serve in its place.
  void aRefusedDutyWithholdsTheStepUntilItIsTyped() {
    auto inputs = cleanStep();
    inputs.log = withValue(inputs.log, "duty", 7, 25);
    const auto result = evaluate(inputs, sheetOf(300));
    QCOMPARE(countOf(result, "refused"), 1);
    QCOMPARE(result.find("hot_end.gain_C")->lacks, std::vector<std::string>{"log"});
    QCOMPARE(result.find("hot_end.guard_rise_C")->lacks, std::vector<std::string>{"log"});
    QVERIFY(!chartOf(result, "response")->isEmpty());
    inputs.stepAt = 30;
    inputs.dutyBefore = 0.25;
    inputs.dutyAfter = 0.45;
    VERIFY_NEAR(valueOf(evaluate(inputs, sheetOf(300)), "hot_end.gain_C"), 450, 1e-6);
  }

  // A refused number costs what needs it: the room only the simulation, the period only gains per sample
  // and the simulation, the closed loop's time only SIMC, the full scale only the proposal at that scale.
  void refusedNumbersCostOnlyWhatNeedsThem() {
    const Json typed{{"heater", "hot_end"}, {"mode", "step"}, {"gain_C", 450},
                     {"tau_s", 120},        {"theta_s", 6},   {"target_C", 215}};
    const std::tuple<const char*, const char*, const char*> cases[] = {
        {"room_C", "hot_end.amigo.dip_C", "hot_end.amigo.Kc"},
        {"period_s", "hot_end.amigo.Kp_per_sample", "hot_end.amigo.Kp"},
        {"tau_c_s", "hot_end.simc.Kc", "hot_end.amigo.dip_C"},
        {"output_full_scale", "hot_end.amigo.Kp_at_full_scale", "hot_end.amigo.dip_C"},
        {"fan_duty", "hot_end.amigo.dip_C", "hot_end.amigo.Kc"},
        {"tau_s", "hot_end.tau_s", "hot_end.gain_C"}};
    for (const auto& [path, lost, kept] : cases) {
      Json bad = typed;
      bad[path] = "eighty";
      const auto result = evaluateJson(step, bad);
      QVERIFY2(result && !result->quantity(lost), path);
      QCOMPARE(result->find(lost)->lacks, std::vector<std::string>{path});
      QVERIFY2(result->quantity(kept), path);
      QVERIFY2(result->missing.empty(), path);
      QCOMPARE(undescribed(step, *result), QString());
    }
    Json bad = typed;
    bad["output_full_scale"] = "eighty";
    QVERIFY(evaluateJson(step, bad)->settings.empty());
  }

  void unevenCyclesAreRefused() {
    QCOMPARE(refusedAt(relay(swing(0.02))), std::string());
    QCOMPARE(refusedAt(relay(swing(0.08))), std::string("log"));  // its amplitude
    LogColumns slowing = swing();
    slowing.duty = [](double t) {
      return std::sin(2 * std::numbers::pi * t / (35 + t / 20)) > 0 ? 0.6 : 0.2;
    };
    QCOMPARE(refusedAt(relay(slowing)), std::string("log"));       // its period
    QCOMPARE(refusedAt(relay(swing(), 190)), std::string("log"));  // too few cycles
    auto wide = relay(swing());
    wide.hysteresis = 4;
    QCOMPARE(refusedAt(wide), std::string("hysteresis_C"));
    const auto result = evaluate(wide, {});
    QCOMPARE(result.find("hot_end.Ku")->lacks, std::vector<std::string>{"hysteresis_C"});
    QVERIFY(result.find("hot_end.guard_rise_C"));
    LogColumns idle = swing();
    idle.duty = [](double) { return 0.4; };
    QCOMPARE(refusedAt(relay(idle)), std::string("log"));
  }

  // NaN is what a refused entry reads as. The hysteresis is needed for the swing, room and target only for
  // what follows from it.
  void refusedNumbersOfARelay() {
    const double refused = std::nan("");
    auto inputs = relay(swing());
    inputs.hysteresis = refused;
    const auto noPoint = evaluate(inputs, {});
    QCOMPARE(noPoint.find("hot_end.Ku")->lacks, std::vector<std::string>{"hysteresis_C"});
    QVERIFY(noPoint.missing.empty() && !noPoint.find("hot_end.tyreus_luyben.Kc"));
    inputs = relay(swing());
    inputs.room = refused;
    const auto noRoom = evaluate(inputs, {});
    QVERIFY(noRoom.quantity("hot_end.Ku") && noRoom.quantity("hot_end.tyreus_luyben.Kc"));
    QCOMPARE(noRoom.find("hot_end.tyreus_luyben.dip_C")->lacks, std::vector<std::string>{"room_C"});
    QVERIFY(!findingOf(noRoom, "rules-not-simulated"));
    inputs = relay(swing());
    inputs.target = refused;
    inputs.log = without(inputs.log, "target_C");
    const auto noTarget = evaluate(inputs, {});
    QVERIFY(noTarget.quantity("hot_end.Ku"));
    QCOMPARE(noTarget.find("hot_end.tyreus_luyben.dip_C")->lacks, std::vector<std::string>{"target_C"});
    QVERIFY(toJson(noTarget) == Json::parse(toJson(noTarget).dump()));
    QCOMPARE(unsoundCharts(noTarget), QString());
  }

  // Three seconds at the target are too few to judge, but the guard needs none: 2 °C/s for 10 s.
  void aRefusedHoldLeavesTheGuard() {
    auto inputs =
        heaterInputs("hold", heaterLog(100, 0.5,
                                       {[](double t) { return 25 + 2 * t; }, [](double) { return 1.0; },
                                        [](double t) { return t < 97 ? 0.0 : 215.0; }}));
    inputs.riseWindow = 10;
    const auto result = evaluate(inputs, {});
    QCOMPARE(findingOf(result, "refused")->at, std::string("log"));
    QVERIFY(result.find("hot_end.held_s") && !result.quantity("hot_end.held_s"));
    VERIFY_NEAR(valueOf(result, "hot_end.guard_rise_C"), 10, 1e-9);
  }

  // A refused row of the target costs the hold test alone, one of the duty the guard alone.
  void aRefusedColumnCostsWhatNeedsIt() {
    const auto quiet = hold(360, [](double) { return 0.2; });
    auto inputs = quiet;
    auto log = std::make_shared<Capture>(*inputs.log);
    log->columns["duty"] = std::vector<double>(log->columns["time_s"].size(), 1.0);
    inputs.log = withValue(log, "target_C", 9, 5000);
    auto result = evaluate(inputs, {});
    QCOMPARE(countOf(result, "refused"), 1);
    QCOMPARE(result.find("hot_end.held_s")->lacks, std::vector<std::string>{"log"});
    QVERIFY(result.quantity("hot_end.slowest_rise_C"));
    inputs.log = withValue(log, "duty", 9, 25);
    result = evaluate(inputs, {});
    QCOMPARE(result.find("hot_end.guard_rise_C")->lacks, std::vector<std::string>{"log"});
    QCOMPARE(valueOf(result, "hot_end.held_s"), valueOf(evaluate(quiet, {}), "hot_end.held_s"));
  }
};

FETTLE_TEST(TestHeaterRefusals)
#include "test_heater_refusals.moc"
