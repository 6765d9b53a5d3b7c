#include <QTest>
#include <cmath>
#include <numbers>

#include "core/steps/catalogue.h"
#include "core/steps/heater_control.h"
#include "tests/support/described.h"
#include "tests/support/heater_logs.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// The judged outcome: verdicts are given by the step, not by evaluate alone.
Verdict verdictOf(const HeaterControlInputs& inputs) {
  const Step& step = *findStep("heater-control");
  StepResult result = evaluate(inputs, {});
  judgeResults(step, {}, result);
  return result.verdict();
}

}  // namespace

/// Relay test, hold and guard.
class TestHeaterRelayHold : public QObject {
  Q_OBJECT
  const Step& step = *findStep("heater-control");

 private slots:
  void everythingIsDescribed() {
    for (const auto& inputs : {relay(swing()), hold(300, [](double) { return 0.2; }),
                               hold(300, [](double t) { return 3 * std::sin(t / 9); })}) {
      auto result = evaluate(inputs, {});
      judgeResults(step, {}, result);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
      QVERIFY(!chartOf(result, "response")->isEmpty());
    }
  }

  // By hand: d = 0.2, a = 3, eps = 0.5: 4·0.2/(π·sqrt(9 − 0.25)) = 0.0860872; Pu = 40. The rows hit the
  // corners, so the four cycles do not scatter: u(Pu) = 0.5/√12/√4.
  void relayGivesTheUltimatePoint() {
    const auto result = evaluate(relay(swing()), {});
    const double ultimateGain = 0.8 / (std::numbers::pi * std::sqrt(8.75));
    VERIFY_NEAR(valueOf(result, "hot_end.Ku"), ultimateGain, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.Pu"), 40, 1e-9);
    VERIFY_NEAR(*result.quantity("hot_end.Pu")->u, 0.5 / std::sqrt(48.0), 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.ziegler_nichols.Kc"), 0.6 * ultimateGain, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.ziegler_nichols.Ti_s"), 20, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.ziegler_nichols.Td_s"), 5, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.tyreus_luyben.Kc"), ultimateGain / 2.2, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.tyreus_luyben.Ti_s"), 88, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.tyreus_luyben.Td_s"), 40 / 6.3, 1e-9);
    QVERIFY(!result.find("hot_end.simc.Kc") && !result.find("hot_end.amigo.Kc"));
    QVERIFY(!findingOf(result, "relay-asymmetric"));
  }

  // By hand: gain (200 − 25)/0.4 = 437.5 °C; with Ku 0.0860872 and w = 2π/40, w·tau = sqrt((K·Ku)² − 1),
  // theta = (π − atan(w·tau))/w. The same numbers typed in a step test simulate the same for the rule
  // whose setting is the same there, Tyreus–Luyben.
  void relayWithDutyIsSimulated() {
    const auto result = evaluate(relay(swing()), {});
    const double loop = 437.5 * 0.8 / (std::numbers::pi * std::sqrt(8.75)), w = 2 * std::numbers::pi / 40;
    HeaterControlInputs typed;
    typed.heater = "hot_end";
    typed.mode = "step";
    typed.gain = 437.5;
    typed.timeConstant = std::sqrt(loop * loop - 1) / w;
    typed.deadTime = (std::numbers::pi - std::atan(w * *typed.timeConstant)) / w;
    typed.target = 200;
    const auto same = evaluate(typed, {});
    for (const char* id : {"overshoot_C", "settling_s", "dip_C"}) {
      const std::string name = std::string("hot_end.tyreus_luyben.") + id;
      VERIFY_NEAR(valueOf(result, name), valueOf(same, name), 0.01);
    }
    QVERIFY(findingOf(result, "simulated-from-relay") && !findingOf(result, "rules-not-simulated"));
    QVERIFY(chartOf(result, "rules"));
    QCOMPARE(result.settings.size(), std::size_t(3));
  }

  // Without duty nobody knows the gain.
  void relayWithoutGainIsNotSimulated() {
    const Json typed{{"mode", "relay"}, {"heater", "bed"}, {"Ku", 0.1}, {"Pu", 60}, {"target_C", 60}};
    const auto result = evaluateJson(step, typed);
    QVERIFY(findingOf(*result, "rules-not-simulated") && result->settings.empty());
    QVERIFY(!result->quantity("bed.guard_rise_C") && result->find("bed.guard_rise_C")->lacks.empty());
    QVERIFY(result->complete && !result->quantity("bed.tyreus_luyben.dip_C"));
    QCOMPARE(result->next.front().field, std::string("log"));  // of a step test
  }

  // The limit cycle of a true heater, L/T = 0.5 without hysteresis (Wang, Hang and Zou 1997): Ku from its
  // a and Tu is 3.23593 for K = d = 1, the true one 3.80688. Here K = 400, T = 20 s, d = 0.2, simulated
  // exactly between rows 20 ms apart; switching is late by up to a row, hence 1 %.
  void relayOnASimulatedHeater() {
    const double row = 0.02;
    double temperature = 150;
    std::vector<double> duties;
    std::vector<double> temperatures;
    const std::size_t delay = 500;
    for (std::size_t i = 0; i < 15000; ++i) {
      temperatures.push_back(temperature);
      duties.push_back(temperature < 200 ? 0.7 : 0.3);
      const double held = i >= delay ? duties[i - delay] : 0.3;
      temperature = 400 * held + (temperature - 400 * held) * std::exp(-row / 20);
    }
    const auto at = [row](const std::vector<double>& values) {
      return [&values, row](double t) { return values[static_cast<std::size_t>(std::lround(t / row))]; };
    };
    auto inputs = heaterInputs("relay", heaterLog(299.9, row, {at(temperatures), at(duties), {}}));
    inputs.hysteresis = 0;
    inputs.target = 200;
    const auto result = evaluate(inputs, {});
    VERIFY_NEAR(valueOf(result, "hot_end.Ku") * 400, 3.23593, 0.03);
    VERIFY_NEAR(valueOf(result, "hot_end.Pu"), 1.663593 * 20, 0.2);
    QVERIFY(!findingOf(result, "relay-asymmetric"));
  }

  void asymmetry() {
    const auto shortOn = evaluate(relay(swing(0, 200, 0.3)), {});
    QCOMPARE(findingOf(shortOn, "relay-asymmetric")->at, std::string("log"));
    QCOMPARE(shortOn.next.front().field, std::string("log"));
    QVERIFY(!findingOf(evaluate(relay(swing(0, 200, 0.4)), {}), "relay-asymmetric"));
    QVERIFY(findingOf(evaluate(relay(swing(0, 201.2)), {}), "relay-asymmetric"));
    QVERIFY(!findingOf(evaluate(relay(swing(0, 200.8)), {}), "relay-asymmetric"));
  }

  // Without duty the cycles are read from the temperature, the duties typed: the same numbers.
  void relayWithoutDuty() {
    LogColumns columns = swing();
    columns.duty = {};
    columns.target = {};
    auto inputs = relay(columns);
    const auto missing = evaluate(inputs, {});
    QCOMPARE(missing.missing, (std::vector<std::string>{"duty_low", "duty_high", "target_C"}));
    QCOMPARE(missing.find("hot_end.Pu")->lacks, missing.missing);
    inputs.dutyLow = 0.2;
    inputs.dutyHigh = 0.6;
    inputs.target = 200;
    inputs.hysteresis.reset();
    QCOMPARE(evaluate(inputs, {}).missing, std::vector<std::string>{"hysteresis_C"});
    inputs.hysteresis = 0.5;
    const auto result = evaluate(inputs, {});
    VERIFY_NEAR(valueOf(result, "hot_end.Ku"), 0.8 / (std::numbers::pi * std::sqrt(8.75)), 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.Pu"), 40, 1e-9);
  }

  void typedUltimatePoint() {
    const Json typed{{"mode", "relay"}, {"heater", "bed"}, {"Ku", 0.1}, {"Pu", 60}};
    VERIFY_NEAR(valueOf(*evaluateJson(step, typed), "bed.ziegler_nichols.Kp"), 0.06, 1e-12);
    const Json half{{"mode", "relay"}, {"heater", "bed"}, {"Ku", 0.1}};
    QCOMPARE(evaluateJson(step, half)->missing, std::vector<std::string>{"Pu"});
  }

  // A bump of 4 °C for 20 s, then 0.5 above, then from 100 s on (log 160 s) 0.3 below: by hand overshoot 4,
  // last reading outside at 79.5 s, so settled at 80 s. Rows 80 to 159.5 s: 160 of +0.5, 160 to 360 s: 401
  // of −0.3; mean (80 − 120.3)/561; peak to peak 0.8; greatest fall 0.3; held 280 s.
  void holdByHand() {
    const auto inputs = hold(360, [](double t) { return t < 20 ? 4.0 : t < 100 ? 0.5 : -0.3; });
    const auto result = evaluate(inputs, {});
    VERIFY_NEAR(valueOf(result, "hot_end.overshoot_C"), 4, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.settling_s"), 80, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.mean_error_C"), (80 - 0.3 * 401) / 561, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.peak_to_peak_C"), 0.8, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.greatest_fall_C"), 0.3, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.held_s"), 280, 1e-9);
    QCOMPARE(verdictOf(inputs), Verdict::pass);
    QVERIFY(!result.find("hot_end.simc.Kc"));
  }

  // The same log. By hand: 5 °C below 215 °C at 25 + 190·t/60 = 210, t = 58.42, so from the row at 58.5 s
  // on; greatest departure 4 °C, and so the greatest mean; the first mean 5 s later. The limits bear their
  // value.
  void holdIsDrawnNearItsTarget() {
    const auto result =
        evaluate(hold(360, [](double t) { return t < 20    ? 4.0
                                                 : t < 100 ? 0.5
                                                           : -0.3; }), {});
    QCOMPARE(result.charts.front().view, std::string("hold"));
    const Chart& chart = result.charts.front();
    const Series &measured = chart.series.at(0), &mean = chart.series.at(1);
    VERIFY_NEAR(measured.x.front(), 58.5, 1e-9);
    VERIFY_NEAR(measured.y.front(), 25 + 190 * 58.5 / 60 - 215, 1e-9);
    VERIFY_NEAR(measured.x.back(), 360, 1e-9);
    VERIFY_NEAR(measured.y.back(), -0.3, 1e-9);
    VERIFY_NEAR(mean.x.front(), 63.5, 1e-9);
    VERIFY_NEAR(*std::max_element(mean.y.begin(), mean.y.end()), 4, 1e-9);
    VERIFY_NEAR(mean.y.back(), -0.3, 1e-9);
    QCOMPARE(chart.lines.size(), std::size_t(3));
    QCOMPARE(chart.lines[1].label, std::string("limit 1 °C"));
    QCOMPARE(chart.lines[2].label, std::string("settled at 80.0 s"));
    const LogColumns cold{[](double) { return 25.0; }, {}, [](double) { return 215.0; }};
    const auto never = evaluate(heaterInputs("hold", heaterLog(300, 0.5, cold)), {});
    QVERIFY(chartOf(never, "response") && !chartOf(never, "hold"));
  }

  // A straight drift of 0.2 °C per minute from −0.5: slope exact, s of a uniform series of n rows with step
  // d is d·sqrt(n(n + 1)/12).
  void driftIsReadOff() {
    const auto result = evaluate(hold(360, [](double t) { return -0.5 + 0.2 * t / 60; }), {});
    QVERIFY(result.settings.empty() && findingOf(result, "hold-proposes-nothing"));
    VERIFY_NEAR(valueOf(result, "hot_end.slope_C_per_min"), 0.2, 0.002);  // a row of the approach counts
    const double n = 601;
    VERIFY_NEAR(valueOf(result, "hot_end.s_C"), 0.2 / 120 * std::sqrt(n * (n + 1) / 12), 0.001);
  }

  void verdicts() {
    const auto quiet = [](double) { return 0.2; };
    QCOMPARE(verdictOf(hold(185, quiet)), Verdict::pass);
    QCOMPARE(verdictOf(hold(150, quiet)), Verdict::undecided);
    const auto ends = evaluate(hold(150, quiet), {});
    QCOMPARE(findingOf(ends, "log-too-short")->severity, Severity::caution);  // undecided
    QCOMPARE(ends.judgement("hot_end.held_s")->limit.low, std::optional(120.0));
    QCOMPARE(ends.next.front().field, std::string("log"));
    QCOMPARE(ends.next.front().count, std::optional(1));
    const auto swings = hold(1200, [](double t) { return 2 * std::sin(t / 20); });
    QCOMPARE(verdictOf(swings), Verdict::fail);
    QCOMPARE(findingOf(evaluate(swings, {}), "never-settles")->severity, Severity::fault);  // fail
    const auto low = hold(900, [](double) { return -5.0; });
    QCOMPARE(verdictOf(low), Verdict::fail);
    QVERIFY(!evaluate(low, {}).quantity("hot_end.settling_s"));
    // By hand: rows 58.5, 59 and 59.5 s of the approach, 211.8333 °C on average, and eight of 210 °C.
    VERIFY_NEAR(valueOf(evaluate(low, {}), "hot_end.overshoot_C"), -4.5, 1e-9);
    StepContext easy;
    for (const char* changed : {"heater-control.hot_end.held_s", "heater-control.<heater>.held_s"}) {
      easy.tolerances = {{changed, {60.0, {}}}};
      auto result = evaluate(hold(150, quiet), easy);
      judgeResults(step, easy, result);
      QVERIFY2(result.verdict() == Verdict::pass && !findingOf(result, "log-too-short"), changed);
    }
  }

  // From above: what lies before the first row at the target is no overshoot. Of several targets the
  // longest counts.
  void fromAboveAndSeveralTargets() {
    auto inputs = heaterInputs(
        "hold", heaterLog(500, 0.5,
                          {[](double t) { return t < 100 ? 240.0 : std::max(240 - (t - 100) / 2, 210.2); },
                           {},
                           [](double t) { return t < 100   ? 240.0
                                                 : t < 490 ? 210.0
                                                           : 0.0; }}));
    const auto result = evaluate(inputs, {});
    QVERIFY(findingOf(result, "more-targets"));
    // 240 falls by 0.5 °C/s to 210.2: within 1 °C of 210 from 58 s after the change on.
    VERIFY_NEAR(valueOf(result, "hot_end.settling_s"), 58, 0.51);
    QVERIFY(!result.quantity("hot_end.overshoot_C"));
    VERIFY_NEAR(valueOf(result, "hot_end.greatest_fall_C"), -0.2, 1e-6);
  }

  void holdNeedsATarget() {
    auto inputs = hold(300, [](double) { return 0.0; });
    auto log = std::make_shared<Capture>(*inputs.log);
    inputs.log = without(log, "target_C");
    const auto waits = evaluate(inputs, {});
    QCOMPARE(waits.missing, std::vector<std::string>{"target_C"});
    QCOMPARE(waits.find("hot_end.overshoot_C")->lacks, waits.missing);
    inputs.target = 215;
    QVERIFY(evaluate(inputs, {}).quantity("hot_end.held_s"));
    log->columns["target_C"].assign(log->rows(), 0.0);
    inputs.log = log;
    QCOMPARE(refusedAt(inputs), std::string("log"));
  }

  // Full duty from 20 to 120 s; rises 2 °C/s to 60 s, then 1 °C/s: slowest 15 s 15 °C, guard 7.5 °C. A bed
  // looks at 90 s: 40·… from 20 s: 80 + 50, from 30 s: 60 + 60 = 120 °C.
  void guard() {
    const auto rise = [](double t) { return t < 20 ? 25.0 : t < 60 ? 25 + 2 * (t - 20) : 105 + (t - 60); };
    const auto duty = [](double t) { return t < 20 || t >= 120 ? 0.3 : 1.0; };
    auto inputs = heaterInputs("hold", heaterLog(240, 0.5, {rise, duty, [](double) { return 280.0; }}));
    auto result = evaluate(inputs, {});
    VERIFY_NEAR(valueOf(result, "hot_end.slowest_rise_C"), 15, 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.guard_rise_C"), 7.5, 1e-9);
    inputs.heater = "bed";
    VERIFY_NEAR(valueOf(evaluate(inputs, {}), "bed.slowest_rise_C"), 120, 1e-9);
    inputs.riseWindow = 7.25;  // between rows
    VERIFY_NEAR(valueOf(evaluate(inputs, {}), "bed.guard_rise_C"), 3.625, 1e-9);
    inputs.riseWindow = 101;
    QVERIFY(!evaluate(inputs, {}).quantity("bed.guard_rise_C"));
    auto log = std::make_shared<Capture>(*inputs.log);
    log->columns["temp_C"].assign(log->rows(), 25.0);
    inputs.log = log;
    inputs.riseWindow = 15;
    result = evaluate(inputs, {});
    QCOMPARE(findingOf(result, "no-rise-at-full-duty")->severity, Severity::fault);
    QVERIFY(!result.quantity("bed.guard_rise_C"));
  }
};

FETTLE_TEST(TestHeaterRelayHold)
#include "test_heater_relay_hold.moc"
