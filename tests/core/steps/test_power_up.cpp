#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

Json everythingWorks() {
  Json inputs{
      {"room_C", 21},
      {"sensors",
       {{{"heater", "hot_end"}, {"indicated_C", 22}}, {{"heater", "bed"}, {"indicated_C", 20.5}}}},
      {"tripped", true},
      {"trip_s", 22},
      {"rises",
       {{{"heater", "hot_end"}, {"start_C", 22}, {"end_C", 40}, {"seconds", 15}, {"other_rise_C", 0.2}},
        {{"heater", "bed"}, {"start_C", 21}, {"end_C", 30}, {"seconds", 90}, {"other_rise_C", 1}}}},
      {"devices", Json::array()},
      {"first_heat", Json::array()}};
  for (const char* device : {"axis_direction", "home_switch", "first_homing", "fan", "fan_low_duty",
                             "emergency_stop", "sensor_unplugged"}) {
    inputs["devices"].push_back(
        {{"device", device}, {"expected", "works"}, {"observed", "works"}, {"ok", true}});
  }
  for (const char* item : {"steps_of_50", "ventilated", "attended", "no_smoke", "terminals", "nozzle"}) {
    inputs["first_heat"].push_back({{"item", item}, {"ok", true}});
  }
  return inputs;
}

}  // namespace

class TestPowerUp : public QObject {
  Q_OBJECT
  const Step& step = *findStep("power-up");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

  /// The result of the same with one rise of the hot end instead.
  StepResult withRise(Json row) const {
    Json inputs = everythingWorks();
    row["heater"] = "hot_end";
    inputs["rises"] = {row};
    return evaluated(inputs);
  }

 private slots:
  void everythingIsDescribed() {
    for (const auto& inputs : {everythingWorks(), Json{{"tripped", true}}, Json{{"tripped", false}}}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
  }

  void nothingIsWrong() {
    const auto result = evaluated(everythingWorks());
    QVERIFY(result.complete);
    for (const auto& finding : result.findings) {
      QVERIFY2(finding.severity == Severity::note, finding.text.c_str());
    }
    QCOMPARE(valueOf(result, "faults"), 0.0);
    QCOMPARE(result.verdict(), Verdict::pass);
  }

  void aDeviceThatDoesOtherwiseIsAFault() {
    Json inputs = everythingWorks();
    inputs["devices"][3] = {{"device", "fan"},
                            {"which", "part"},
                            {"expected", "blows down"},
                            {"observed", "blows up"},
                            {"ok", false}};
    const auto result = evaluated(inputs);
    const Finding* wrong = findingOf(result, "device-wrong");
    QCOMPARE(wrong->severity, Severity::fault);
    QVERIFY(wrong->text.find("blows up") != std::string::npos &&
            wrong->text.find("part") != std::string::npos);
    QCOMPARE(valueOf(result, "devices_wrong"), 1.0);
    QCOMPARE(verdictOf(result, "faults"), Verdict::fail);
  }

  void stopAndSensorFaultMustBeProved() {
    Json inputs = everythingWorks();
    inputs["devices"].erase(6);
    QVERIFY(findingOf(evaluated(inputs), "sensor-fault-not-proved"));
    QVERIFY(!findingOf(evaluated(inputs), "stop-not-proved"));
    inputs = everythingWorks();
    inputs["devices"][5]["ok"] = false;
    QVERIFY(findingOf(evaluated(inputs), "stop-not-proved"));
    inputs["devices"].erase(5);
    QCOMPARE(findingOf(evaluated(inputs), "stop-not-proved")->severity, Severity::fault);
  }

  void otherDevicesNotTriedAreACaution() {
    Json inputs = everythingWorks();
    inputs["devices"].erase(0);
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "not-tried")->severity, Severity::caution);
    QCOMPARE(valueOf(result, "faults"), 0.0);
  }

  // One reading of a thermometer with r 0.1 and e 1.0: u² = 0.01/12 + 1/3, g = 1.6449·u = 0.9508 °C.
  void sensorsAtRest() {
    const auto result = evaluated(everythingWorks());
    VERIFY_NEAR(valueOf(result, "bed.rest_deviation_C"), -0.5, 1e-12);
    VERIFY_NEAR(*result.quantity("bed.rest_deviation_C")->u, std::sqrt(0.01 / 12 + 1.0 / 3), 1e-12);
    for (const auto& [indicated, verdict] : {std::pair{23.0, Verdict::pass},
                                             {23.1, Verdict::undecided},
                                             {24.9, Verdict::undecided},
                                             {25.0, Verdict::fail},
                                             {16.9, Verdict::fail}}) {
      Json inputs = everythingWorks();
      inputs["sensors"][0]["indicated_C"] = indicated;
      const auto one = evaluated(inputs);
      QCOMPARE(verdictOf(one, "hot_end.rest_deviation_C"), verdict);
      const auto* off = findingOf(one, "sensor-off-at-rest");
      QCOMPARE(off && off->severity == Severity::fault, verdict == Verdict::fail);
    }
  }

  // Allowed ±1 °C instead of ±3: 1.5 °C off is undecided and outside, 2 °C off fails; 0.9 °C off is inside.
  void theUsersToleranceCountsAtRest() {
    StepContext context;
    context.tolerances["power-up.<heater>.rest_deviation_C"] = {-1.0, 1.0};
    for (const auto& [off, severity] : {std::pair{0.9, std::optional<Severity>()},
                                        {1.5, std::optional(Severity::caution)},
                                        {2.0, std::optional(Severity::fault)}}) {
      Json inputs = everythingWorks();
      inputs["sensors"][0]["indicated_C"] = inputs["room_C"].get<double>() + off;
      const auto result = evaluated(inputs, context);
      const auto* said = findingOf(result, "sensor-off-at-rest");
      QCOMPARE(said ? std::optional(said->severity) : std::nullopt, severity);
      const Chart* rest = chartOf(result, "rest");
      QCOMPARE(rest->bands.front().to, inputs["room_C"].get<double>() + 1);
      const auto bar = std::find_if(rest->series.begin(), rest->series.end(),
                                    [](const Series& series) { return series.role == SeriesRole::trace; });
      QVERIFY(bar != rest->series.end());  // 1.96·√(0.1²/12 + 1/3) °C either side
      VERIFY_NEAR(bar->y.back() - bar->y.front(), 2 * 1.96 * std::sqrt(0.01 / 12 + 1.0 / 3), 0.001);
    }
  }

  // Guard band 1.645·√(0.1²/12 + 1/3) = 0.95 °C: 3.5 °C off is undecided, and said.
  void aDoubtfulSensorIsACaution() {
    Json inputs = everythingWorks();
    inputs["sensors"][0]["indicated_C"] = inputs["room_C"].get<double>() + 3.5;
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "sensor-off-at-rest")->severity, Severity::caution);
    QCOMPARE(valueOf(result, "faults"), 0.0);
  }

  void whatWasReadOnceIsSaidOnce() {
    const auto result = evaluated(everythingWorks());
    QCOMPARE(countOf(result, "single-reading"), 1);
  }

  void theGuardMustTrip() {
    VERIFY_NEAR(valueOf(evaluated(everythingWorks()), "trip_s"), 22, 1e-12);
    Json inputs = everythingWorks();
    inputs.erase("trip_s");
    auto result = evaluated(inputs);
    QCOMPARE(result.find("trip_s")->lacks, std::vector<std::string>{"trip_s"});
    QVERIFY(!findingOf(result, "guard-not-proved"));
    inputs["tripped"] = false;
    result = evaluated(inputs);
    QCOMPARE(findingOf(result, "guard-no-trip")->severity, Severity::fault);
    QVERIFY(!findingOf(result, "guard-not-proved"));
    inputs.erase("tripped");
    QCOMPARE(findingOf(evaluated(inputs), "guard-not-proved")->severity, Severity::fault);
    inputs["trip_s"] = 20;
    QVERIFY(!findingOf(evaluated(inputs), "guard-not-proved"));
  }

  // By hand: 18 °C in 15 s are 72 °C a minute; 9 °C in 90 s are 6.
  void rates() {
    const auto result = evaluated(everythingWorks());
    VERIFY_NEAR(valueOf(result, "hot_end.rate_C_per_min"), 72, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.rate_C_per_min"), 6, 1e-12);
    VERIFY_NEAR(valueOf(result, "hot_end.rise_in_window_C"), 18, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.rise_limit_C"), 1.5, 1e-12);
  }

  // Limit 1.5 °C in 15 s; with a scatter of 0.5 °C at rest 5·0.5 = 2.5 °C.
  void aSensorThatDoesNotMove() {
    const auto still = withRise({{"start_C", 21}, {"end_C", 22.4}, {"seconds", 15}});
    QCOMPARE(findingOf(still, "sensor-not-moving")->severity, Severity::fault);
    QVERIFY(!findingOf(still, "sensors-swapped"));
    QVERIFY(!findingOf(withRise({{"start_C", 21}, {"end_C", 22.5}, {"seconds", 15}}), "sensor-not-moving"));
    const Json restless{{"start_C", 21}, {"end_C", 23}, {"seconds", 15}, {"rest_s_C", 0.5}};
    const auto noisy = withRise(restless);
    QVERIFY(findingOf(noisy, "sensor-not-moving"));
    VERIFY_NEAR(valueOf(noisy, "hot_end.rise_limit_C"), 2.5, 1e-12);
    // 4 °C in a minute are 1 °C in 15 s.
    QVERIFY(findingOf(withRise({{"start_C", 21}, {"end_C", 25}, {"seconds", 60}}), "sensor-not-moving"));
    QVERIFY(!findingOf(withRise({{"start_C", 21}, {"end_C", 25}, {"seconds", 60}, {"rise_window_s", 30}}),
                       "sensor-not-moving"));
    QVERIFY(findingOf(withRise({{"start_C", 21}, {"end_C", 19}, {"seconds", 20}}), "sensor-not-moving"));
  }

  void tooShortALookDecidesNothing() {
    const auto early = withRise({{"start_C", 21}, {"end_C", 21.4}, {"seconds", 5}});
    QCOMPARE(findingOf(early, "window-not-full")->severity, Severity::caution);
    QVERIFY(!findingOf(early, "sensor-not-moving"));
    const auto enough = withRise({{"start_C", 21}, {"end_C", 23}, {"seconds", 5}});
    QVERIFY(!findingOf(enough, "window-not-full"));
  }

  void swappedSensors() {
    const Json row{{"start_C", 21}, {"end_C", 21.2}, {"seconds", 15}, {"other_rise_C", 12}};
    const auto swapped = withRise(row);
    QCOMPARE(findingOf(swapped, "sensors-swapped")->severity, Severity::fault);
    QVERIFY(findingOf(swapped, "sensor-not-moving"));
    // Both move, the other one more.
    QVERIFY(findingOf(withRise({{"start_C", 21}, {"end_C", 24}, {"seconds", 15}, {"other_rise_C", 12}}),
                      "sensors-swapped"));
    // Noise of another sensor is no swap.
    QVERIFY(!findingOf(withRise({{"start_C", 21}, {"end_C", 21.2}, {"seconds", 15}, {"other_rise_C", 0.4}}),
                       "sensors-swapped"));
    QVERIFY(!findingOf(evaluated(everythingWorks()), "sensors-swapped"));
  }

  void smokeIsAFaultAndOpenItemsACaution() {
    Json inputs = everythingWorks();
    inputs["first_heat"][3]["ok"] = false;
    QCOMPARE(findingOf(evaluated(inputs), "smoke")->severity, Severity::fault);
    QVERIFY(!findingOf(evaluated(inputs), "first-heat-open"));
    inputs["first_heat"].erase(3);
    QVERIFY(!findingOf(evaluated(inputs), "smoke"));
    QCOMPARE(findingOf(evaluated(inputs), "first-heat-open")->severity, Severity::caution);
  }

  void faultsStandWhileEntriesAreIncomplete() {
    Json inputs = everythingWorks();
    inputs["devices"][0].erase("ok");
    inputs["devices"][3]["ok"] = false;
    inputs["sensors"][1].erase("indicated_C");
    inputs["rises"][0].erase("seconds");
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing,
             (std::vector<std::string>{"devices[1].ok", "sensors[2].indicated_C", "rises[1].seconds"}));
    QVERIFY(findingOf(result, "device-wrong"));
    QVERIFY(findingOf(result, "not-tried"));  // a row without an answer proves nothing
    VERIFY_NEAR(valueOf(result, "hot_end.rest_deviation_C"), 1, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.rate_C_per_min"), 6, 1e-12);
  }

  void theSensorsWaitForTheRoom() {
    Json inputs = everythingWorks();
    inputs.erase("room_C");
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing, std::vector<std::string>{"room_C"});
    QCOMPARE(result.find("bed.rest_deviation_C")->lacks, std::vector<std::string>{"room_C"});
    VERIFY_NEAR(valueOf(result, "trip_s"), 22, 1e-12);
    VERIFY_NEAR(valueOf(result, "faults"), 0, 0);
  }

  // What went wrong counts although nobody said what was tried.
  void aBlankDeviceHidesNoFault() {
    Json inputs = everythingWorks();
    inputs["devices"].push_back({{"observed", "a blue flash"}, {"ok", false}});
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing, std::vector<std::string>{"devices[8].device"});
    QCOMPARE(findingOf(result, "device-wrong")->at, std::string("devices[8]"));
    VERIFY_NEAR(valueOf(result, "devices_wrong"), 1, 0);
  }

  void aBadCellLeavesTheOtherResults() {
    Json inputs = everythingWorks();
    inputs["rises"][0]["seconds"] = "quick";
    inputs["sensors"][1]["indicated_C"] = 9000;
    inputs["trip_s"] = -1;
    const auto result = evaluated(inputs);
    QCOMPARE(countOf(result, "refused"), 3);
    QCOMPARE(findingOf(result, "refused")->at, std::string("sensors[2].indicated_C"));
    QVERIFY(!result.find("hot_end.rate_C_per_min") && !result.find("bed.rest_deviation_C"));
    QVERIFY(result.find("trip_s") && !result.quantity("trip_s"));
    VERIFY_NEAR(valueOf(result, "hot_end.rest_deviation_C"), 1, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.rate_C_per_min"), 6, 1e-12);
    VERIFY_NEAR(valueOf(result, "devices_wrong"), 0, 0);
  }

  // What is tried follows from the machine: a bed has its own sensor to unplug.
  void thePlanAsksForAnswersOnly() {
    StepContext context;
    const auto rows = [&] { return step.plans.front().rows(Json::object(), context); };
    const std::size_t without = rows().size();
    context.sheet.bedMax = 110;
    QCOMPARE(rows().size(), without + 1);
    Json answered = rows();
    for (auto& row : answered) {
      row["ok"] = true;
    }
    const auto result = evaluated({{"devices", answered}});
    QVERIFY(result.missing.empty());
    for (const char* code : {"not-tried", "stop-not-proved", "sensor-fault-not-proved"}) {
      QVERIFY2(!findingOf(result, code), code);
    }
  }

  void anAnswerAgainstATimeLeavesTheGuardNotProved() {
    Json inputs = everythingWorks();
    inputs["tripped"] = false;
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("trip_s"));
    QVERIFY(findingOf(result, "guard-not-proved"));
    QVERIFY(result.find("trip_s") && !result.quantity("trip_s"));
    VERIFY_NEAR(valueOf(result, "faults"), 1, 0);  // the guard; what was entered wrong is none
    VERIFY_NEAR(valueOf(result, "bed.rest_deviation_C"), -0.5, 1e-12);
    QVERIFY(!result.complete);
  }

  void aSensorThatComesTwiceWithholdsItself() {
    Json inputs = everythingWorks();
    inputs["sensors"].push_back({{"heater", "bed"}, {"indicated_C", 25}});
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("sensors[3]"));
    QVERIFY(result.find("bed.rest_deviation_C") && !result.quantity("bed.rest_deviation_C"));
    VERIFY_NEAR(valueOf(result, "hot_end.rest_deviation_C"), 1, 1e-12);
    VERIFY_NEAR(valueOf(result, "faults"), 0, 0);
  }

  // Two looks at one heater are told apart by their rows.
  void aHeaterThatRisesAgainIsNamedByItsRow() {
    Json inputs = everythingWorks();
    inputs["rises"].push_back(
        {{"heater", "bed"}, {"start_C", 21}, {"end_C", 33}, {"seconds", 90}, {"other_rise_C", 1}});
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "bed_2.rate_C_per_min"), 8, 1e-12);  // 12 °C in 1.5 min
    QCOMPARE(result.find("bed_2.rate_C_per_min")->names, std::vector<std::string>{"Bed, row 3"});
    QCOMPARE(result.find("bed.rate_C_per_min")->names, std::vector<std::string>{"Bed"});
  }
};

FETTLE_TEST(TestPowerUp)
#include "test_power_up.moc"
