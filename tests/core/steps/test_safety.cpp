#include "tests/support/safety_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

class TestSafety : public QObject {
  Q_OBJECT
  const Step& step = *findStep("safety");

  StepResult evaluated(const Json& inputs, const StepContext& context = benchWithSupply()) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json traced = safetyInOrder();
    traced["heaters"].push_back(
        {{"heater", "bed"}, {"kind", "copper-trace"}, {"ohm", 2.4}, {"working_C", 100}, {"rated_W", 180}});
    for (const auto& inputs :
         {safetyInOrder(), traced, Json{{"checks", safetyTicked()}}, Json{{"checks", {"guards"}}}}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
  }

  void nothingOpen() {
    const auto result = evaluated(safetyInOrder());
    QVERIFY(result.complete);
    QCOMPARE(result.verdict(), Verdict::pass);
    for (const auto& finding : result.findings) {
      QVERIFY2(finding.severity == Severity::note, finding.text.c_str());
    }
    QVERIFY(findingOf(result, "mains-work"));
    QCOMPARE(valueOf(result, "critical_open"), 0.0);
  }

  void eachCriticalItemClosesTheGate() {
    for (const char* item : {"earth_bond", "fuses", "emergency_stop", "heater_clamped"}) {
      for (const Json& ok : {Json(false), Json()}) {
        Json inputs = safetyInOrder();
        answer(inputs, item)["ok"] = ok;
        const auto result = evaluated(inputs);
        const Finding* open = findingOf(result, "critical-open");
        QVERIFY2(open, item);
        QCOMPARE(open->severity, Severity::fault);
        QCOMPARE(valueOf(result, "critical_open"), 1.0);
        QCOMPARE(verdictOf(result, "critical_open"), Verdict::fail);
      }
    }
  }

  void otherOpenItemsDoNotCloseIt() {
    Json inputs = safetyInOrder();
    answer(inputs, "smoke_alarm")["ok"] = false;
    const auto result = evaluated(inputs);
    QVERIFY(!findingOf(result, "critical-open"));
    QCOMPARE(findingOf(result, "checks-open")->severity, Severity::caution);
    QCOMPARE(valueOf(result, "open_items"), 1.0);
    QCOMPARE(result.verdict(), Verdict::fail);
  }

  void aMissingAnswerAndATwofoldOneAreOpen() {
    Json inputs = safetyInOrder();
    inputs["checks"].erase(1);  // earth bond
    QVERIFY(findingOf(evaluated(inputs), "critical-open"));
    Json twofold = safetyInOrder();
    twofold["checks"].push_back({{"item", "fuses"}, {"ok", false}, {"initials", "C"}, {"time", "10:00"}});
    QVERIFY(findingOf(evaluated(twofold), "critical-open"));
    std::swap(twofold["checks"][3], twofold["checks"][10]);
    QVERIFY(findingOf(evaluated(twofold), "critical-open"));
  }

  void anUnfinishedRowDoesNotOpenTheGate() {
    Json inputs = safetyInOrder();
    answer(inputs, "fuses")["ok"] = Json();
    inputs["earth"][0].erase("ohm");
    inputs["heaters"][0].erase("ohm");
    inputs["circuits"][0].erase("name");
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing,
             (std::vector<std::string>{"earth[1].ohm", "heaters[1].ohm", "circuits[1].name"}));
    QCOMPARE(result.find("hot_end.power_W")->lacks, std::vector<std::string>{"heaters[1].ohm"});
    QVERIFY(!result.find("frame.earth_ohm"));
    VERIFY_NEAR(valueOf(result, "bed_plate.earth_ohm"), 0.06, 1e-12);  // the other rows still count
    QVERIFY(findingOf(result, "critical-open"));
  }

  // A heater that is not known yet would make the load of the supply too small.
  void theSupplyWaitsForAHalfTypedHeater() {
    Json inputs = safetyInOrder();
    inputs["heaters"].push_back({{"heater", "bed"}, {"rated_W", 240}});
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "hot_end.power_W"), 40, 1e-12);
    for (const char* id : {"supply_load_W", "supply_load", "bed.power_W", "bed.power_ratio"}) {
      QCOMPARE(result.find(id)->lacks, std::vector<std::string>{"heaters[2].ohm"});
    }
  }

  void aBadCellLeavesTheOtherResults() {
    Json inputs = safetyInOrder();
    inputs["earth"][0]["ohm"] = "little";
    inputs["room_C"] = 900;
    inputs["heaters"].push_back(
        {{"heater", "bed"}, {"kind", "copper-trace"}, {"ohm", 2.4}, {"working_C", 100}, {"rated_W", 180}});
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("earth[1].ohm"));
    QCOMPARE(countOf(result, "refused"), 2);
    QVERIFY(!result.find("frame.earth_ohm"));
    VERIFY_NEAR(valueOf(result, "bed_plate.earth_ohm"), 0.06, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.power_W"), 240, 1e-9);  // cold: needs no room temperature
    QVERIFY(result.find("bed.working_power_W") && !result.quantity("bed.working_power_W"));
    QCOMPARE(verdictOf(result, "bed.power_W"), Verdict::none);
    VERIFY_NEAR(valueOf(result, "critical_open"), 0, 0);
  }

  void withoutInitialsOrTime() {
    QVERIFY(!findingOf(evaluated(safetyInOrder()), "not-signed"));
    Json inputs = safetyInOrder();
    answer(inputs, "guards").erase("time");
    QVERIFY(findingOf(evaluated(inputs), "not-signed")->text.find("guards") != std::string::npos);
  }

  // One reading of a tester with r 0.001 and e 0.01: u² = 0.001²/12 + 0.01²/3, g = 1.6449·u = 0.0095 Ω.
  void earth() {
    const auto result = evaluated(safetyInOrder());
    VERIFY_NEAR(valueOf(result, "frame.earth_ohm"), 0.04, 1e-12);
    VERIFY_NEAR(*result.quantity("frame.earth_ohm")->u, std::sqrt(1e-6 / 12 + 1e-4 / 3), 1e-12);
    QCOMPARE(verdictOf(result, "bed_plate.earth_ohm"), Verdict::pass);
    for (const auto& [ohm, verdict] : {std::pair{0.090, Verdict::pass},
                                       {0.091, Verdict::undecided},
                                       {0.109, Verdict::undecided},
                                       {0.110, Verdict::fail}}) {
      Json inputs = safetyInOrder();
      inputs["earth"][0]["ohm"] = ohm;
      const auto one = evaluated(inputs);
      QCOMPARE(verdictOf(one, "frame.earth_ohm"), verdict);
      QCOMPARE(findingOf(one, "critical-open") != nullptr, verdict != Verdict::pass);
      QCOMPARE(findingOf(one, "earth-high") != nullptr, verdict == Verdict::fail);
      QCOMPARE(findingOf(one, "earth-undecided") != nullptr, verdict == Verdict::undecided);
    }
  }

  void whatWouldDecideTheEarthIsSaid() {
    Json inputs = safetyInOrder();
    inputs["earth"] = {{{"part", "Frame"}, {"ohm", 0.095}}};
    QVERIFY(findingOf(evaluated(inputs), "earth-undecided")->text.find("Clean") != std::string::npos);
    inputs["instruments"] = {{"ohm", {{"name", "meter"}, {"r", 0.1}, {"e", 0.2}}}};
    QVERIFY(findingOf(evaluated(inputs), "earth-undecided")->text.find("four-wire") != std::string::npos);
  }

  void aMultimeterCannotDecideTheEarth() {
    Json inputs = safetyInOrder();
    inputs["instruments"]["ohm"] = {{"name", "multimeter"}, {"r", 0.1}, {"e", 0.2}};
    QVERIFY(findingOf(evaluated(inputs), "earth-undecided"));
  }

  void theUsersEarthLimitCounts() {
    Json inputs = safetyInOrder();
    inputs["earth"][0]["ohm"] = 0.15;
    StepContext context = benchWithSupply();
    context.tolerances["safety.frame.earth_ohm"] = {std::nullopt, 0.2};
    QVERIFY(!findingOf(evaluated(inputs, context), "critical-open"));
    QCOMPARE(chartOf(evaluated(inputs, context), "earth")->lines.front().at, 0.1);  // of one part only
    context.tolerances["safety.<part>.earth_ohm"] = {std::nullopt, 0.3};
    const auto wider = evaluated(inputs, context);
    QCOMPARE(chartOf(wider, "earth")->lines.front().at, 0.3);
    QCOMPARE(chartOf(wider, "earth")->lines.front().label, std::string("limit 0.3 Ω"));
    // The bar of the first part shows the U it was judged by.
    const auto& series = chartOf(wider, "earth")->series;
    const auto bar = std::find_if(series.begin(), series.end(),
                                  [](const Series& one) { return one.role == SeriesRole::trace; });
    QVERIFY(bar != series.end());
    VERIFY_NEAR(bar->y.back() - 0.15, *expandedUncertainty(*wider.quantity("frame.earth_ohm")), 1e-9);
  }

  // By hand: 24²/14.4 = 40 W, 24/14.4 = 1.66667 A. u(V)/V = 0.01/√3; u(R)/R = (0.2 + 0.144)/14.4/√3.
  void heaterPower() {
    const auto result = evaluated(safetyInOrder());
    VERIFY_NEAR(valueOf(result, "hot_end.power_W"), 40, 1e-12);
    VERIFY_NEAR(valueOf(result, "hot_end.current_A"), 24 / 14.4, 1e-12);
    const double volt = 0.01 / std::sqrt(3.0), ohm = 0.344 / 14.4 / std::sqrt(3.0);
    VERIFY_NEAR(*result.quantity("hot_end.power_W")->u, 40 * std::hypot(2 * volt, ohm), 1e-9);
    VERIFY_NEAR(valueOf(result, "hot_end.power_ratio"), 1, 1e-12);
    QCOMPARE(verdictOf(result, "hot_end.power_W"), Verdict::pass);
    Json blank = safetyInOrder();
    blank["heaters"][0].erase("volt");
    VERIFY_NEAR(valueOf(evaluated(blank), "hot_end.power_W"), 40, 1e-12);
    QCOMPARE(evaluated(blank, {}).missing, std::vector<std::string>{"heaters[1].volt"});
  }

  // A heater of 3.6 Ω at 24 V takes 160 W: four times its 40 W, so it is one for 12 V. One of 57.6 Ω
  // takes 10.
  void aHeaterForAnotherVoltage() {
    Json inputs = safetyInOrder();
    inputs["heaters"][0]["ohm"] = 3.6;
    const auto strong = evaluated(inputs);
    QCOMPARE(findingOf(strong, "heater-off-rating")->severity, Severity::fault);
    QVERIFY(findingOf(strong, "heater-off-rating")->text.find("half of this voltage") != std::string::npos);
    QCOMPARE(verdictOf(strong, "hot_end.power_W"), Verdict::fail);
    inputs["heaters"][0]["ohm"] = 57.6;
    const auto weak = evaluated(inputs);
    QCOMPARE(findingOf(weak, "heater-off-rating")->severity, Severity::caution);
    QVERIFY(findingOf(weak, "heater-off-rating")->text.find("twice this voltage") != std::string::npos);
    QVERIFY(!findingOf(evaluated(safetyInOrder()), "heater-off-rating"));
  }

  // By hand: 24²/2.4 = 240 W cold; at 100 °C R = 2.4·(1 + 0.0039·75) = 3.102 Ω, 185.687 W.
  void copperTraceIsComparedWarm() {
    Json inputs = safetyInOrder();
    inputs["heaters"] = {{{"heater", "bed"}, {"kind", "copper-trace"}, {"ohm", 2.4}, {"rated_W", 185}}};
    const auto cold = evaluated(inputs);
    QCOMPARE(cold.missing, std::vector<std::string>{"heaters[1].working_C"});
    VERIFY_NEAR(valueOf(cold, "bed.power_W"), 240, 1e-9);
    QCOMPARE(verdictOf(cold, "bed.power_W"), Verdict::none);
    inputs["heaters"][0]["working_C"] = 100;
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "bed.power_W"), 240, 1e-9);
    VERIFY_NEAR(valueOf(result, "bed.working_power_W"), 576 / 3.102, 1e-9);
    VERIFY_NEAR(valueOf(result, "bed.power_ratio"), 576 / 3.102 / 185, 1e-9);
    QVERIFY(!findingOf(result, "heater-off-rating"));
    // 240 W cold would fail; u of 2.4 Ω is 0.224/√3, so 2·1.645·u(P) = 35.9 W leave 1.1 W of ±18.5 to pass.
    QCOMPARE(verdictOf(result, "bed.power_W"), Verdict::pass);
  }

  // A multimeter's 0.2 Ω on 1.8 Ω: g = 1.645·320·√((0.02² + (0.218/1.8)²)/3) = 37.3 W of ±32 W.
  void aMultimeterIsTooCoarseForABed() {
    Json inputs = safetyInOrder();
    inputs["heaters"] = {{{"heater", "bed"}, {"ohm", 1.8}, {"rated_W", 320}}};
    const auto coarse = evaluated(inputs);
    QCOMPARE(verdictOf(coarse, "bed.power_W"), Verdict::undecided);
    const std::string said = findingOf(coarse, "instrument-too-coarse")->text;
    QVERIFY2(said.starts_with("Bed, power: the guard bands of 2 × 37.3 W fill the tolerance of 64 W"),
             said.c_str());
    QVERIFY(said.find("four-wire low-ohm tester would do") != std::string::npos);
    inputs["instruments"] = {{"ohm", {{"name", "tester"}, {"r", 0.001}, {"e", 0.02}}}};
    QCOMPARE(verdictOf(evaluated(inputs), "bed.power_W"), Verdict::pass);
  }

  // The tester that is the earth's default, named for the heaters: u(R) = √(0.001²/12 + 0.01²/3) Ω of 1.8
  // Ω.
  void aNamedInstrumentCountsForTheHeaters() {
    Json inputs = safetyInOrder();
    inputs["heaters"] = {{{"heater", "bed"}, {"ohm", 1.8}, {"rated_W", 320}}};
    inputs["instruments"] = {{"ohm", {{"name", "four-wire low-ohm tester"}, {"r", 0.001}, {"e", 0.01}}}};
    const double volt = 0.01 / std::sqrt(3.0), ohm = std::sqrt(1e-6 / 12 + 1e-4 / 3) / 1.8;
    VERIFY_NEAR(*evaluated(inputs).quantity("bed.power_W")->u, 320 * std::hypot(2 * volt, ohm), 1e-9);
  }

  void ratedPowerOfTheSheet() {
    Json inputs = safetyInOrder();
    inputs["heaters"][0].erase("rated_W");
    QCOMPARE(verdictOf(evaluated(inputs), "hot_end.power_W"), Verdict::none);
    QVERIFY(!evaluated(inputs).quantity("hot_end.power_ratio"));
    StepContext context = benchWithSupply();
    context.sheet.hotEndPower = 50;
    VERIFY_NEAR(valueOf(evaluated(inputs, context), "hot_end.power_ratio"), 0.8, 1e-12);
    QCOMPARE(verdictOf(evaluated(inputs, context), "hot_end.power_W"), Verdict::fail);
  }

  void aPtcIsNotJudged() {
    Json inputs = safetyInOrder();
    inputs["heaters"][0]["kind"] = "ptc";
    inputs["heaters"][0]["rated_W"] = 500;
    const auto result = evaluated(inputs);
    QVERIFY(!result.quantity("hot_end.power_ratio") && !findingOf(result, "heater-off-rating"));
    VERIFY_NEAR(valueOf(result, "hot_end.power_W"), 40, 1e-12);
  }
};

FETTLE_TEST(TestSafety)
#include "test_safety.moc"
