#include "tests/support/safety_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Supply, wires and circuits, and rows that are refused or excluded.
class TestSafetyCircuits : public QObject {
  Q_OBJECT
  const Step& step = *findStep("safety");

  StepResult evaluated(const Json& inputs, const StepContext& context = benchWithSupply()) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  // By hand: 40 + 60 = 100 W of 350; with a bed of 240 W 340 W, over 0.8·350 = 280 W; fed from the mains it
  // does not count.
  void supply() {
    auto result = evaluated(safetyInOrder());
    VERIFY_NEAR(valueOf(result, "supply_load_W"), 100, 1e-9);
    VERIFY_NEAR(valueOf(result, "supply_load"), 100.0 / 350, 1e-12);
    QVERIFY(!findingOf(result, "supply-overloaded"));
    Json inputs = safetyInOrder();
    inputs["heaters"].push_back({{"heater", "bed"}, {"ohm", 2.4}, {"rated_W", 240}});
    result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "supply_load_W"), 340, 1e-9);
    // The limit of error is common to all readings of one instrument, so it adds up (JCGM 100, 5.2).
    const double volts = 2 * 0.01 * 280, ohms = 40 * 0.344 / 14.4 + 240 * 0.224 / 2.4;
    VERIFY_NEAR(*result.quantity("supply_load_W")->u, std::hypot(volts, ohms) / std::sqrt(3.0), 1e-9);
    QCOMPARE(findingOf(result, "supply-overloaded")->severity, Severity::caution);
    inputs["other_W"] = 80;
    QCOMPARE(findingOf(evaluated(inputs), "supply-overloaded")->severity, Severity::fault);
    inputs["heaters"][1]["fed_from"] = "mains";
    QCOMPARE(evaluated(inputs).missing, std::vector<std::string>{"heaters[2].volt"});
    inputs["heaters"][1]["volt"] = 230;
    inputs["heaters"][1]["ohm"] = 220;
    VERIFY_NEAR(valueOf(evaluated(inputs), "supply_load_W"), 120, 1e-9);
    inputs.erase("other_W");
    QCOMPARE(evaluated(inputs).find("supply_load")->lacks, std::vector<std::string>{"other_W"});
  }

  // IEC 60204-1, copper with PVC, method B1 at 40 °C: 1.5 mm² 13.5 A, 2.5 mm² 18.3 A, 10 mm² 44 A (from
  // memory, alike in its editions). Between two sizes the smaller one counts.
  void wires() {
    QCOMPARE(wireLimit(1.5), std::optional(13.5));
    QCOMPARE(wireLimit(2.4), std::optional(13.5));
    QCOMPARE(wireLimit(2.5), std::optional(18.3));
    QCOMPARE(wireLimit(10), std::optional(44.0));
    QCOMPARE(wireLimit(16), std::optional(60.0));
    QCOMPARE(wireLimit(0.5), std::optional(5.0));  // common practice, no source
    QVERIFY(!wireLimit(0.1) && !wireLimit(25));
  }

  // By hand: 13.5 − 10 = 3.5 A, 10 − 8 = 2 A; a fuse of 20 A is above the 13.5 A of 1.5 mm².
  void circuits() {
    auto result = evaluated(safetyInOrder());
    VERIFY_NEAR(valueOf(result, "bed.fuse_margin_A"), 3.5, 1e-12);
    VERIFY_NEAR(valueOf(result, "bed.load_margin_A"), 2, 1e-12);
    QVERIFY(!findingOf(result, "fuse-over-wire") && !findingOf(result, "load-over-fuse"));
    Json inputs = safetyInOrder();
    inputs["circuits"][0]["fuse_A"] = 20;
    result = evaluated(inputs);
    QCOMPARE(findingOf(result, "fuse-over-wire")->severity, Severity::fault);
    QVERIFY(findingOf(result, "critical-open"));
    QCOMPARE(verdictOf(result, "bed.fuse_margin_A"), Verdict::fail);
    inputs["circuits"][0]["fuse_A"] = 5;
    result = evaluated(inputs);
    QCOMPARE(findingOf(result, "load-over-fuse")->severity, Severity::caution);
    QVERIFY(!findingOf(result, "critical-open"));
    inputs["circuits"][0].erase("wire_mm2");
    result = evaluated(inputs);
    QCOMPARE(result.find("bed.fuse_margin_A")->lacks, std::vector<std::string>{"circuits[1].wire_mm2"});
    VERIFY_NEAR(valueOf(result, "bed.load_margin_A"), -3, 1e-12);  // 5 − 8
  }

  void namesOfPartsDiffer() {
    DistinctNames names;
    QCOMPARE(names.next("Z Motor"), std::string("z_motor"));
    QCOMPARE(names.next("z motor"), std::string("z_motor_2"));
    QCOMPARE(names.next("z-motor"), std::string("z_motor_3"));
    QCOMPARE(names.next("Größe"), std::string("gr__e"));
  }

  void excludedRowsDoNotCount() {
    Json inputs = safetyInOrder();
    inputs["earth"].push_back({{"part", "Lid"}, {"ohm", 50}, {"excluded", "painted"}});
    const auto result = evaluated(inputs);
    QVERIFY(!result.find("lid.earth_ohm") && !findingOf(result, "critical-open"));
    QCOMPARE(chartOf(result, "earth")->series.back().role, SeriesRole::excluded);
  }

  void aHeaterThatComesTwiceWithholdsItsOwn() {
    Json inputs = safetyInOrder();
    inputs["heaters"].push_back({{"heater", "hot_end"}, {"ohm", 15}, {"rated_W", 40}});
    inputs["heaters"].push_back({{"heater", "bed"}, {"ohm", 2.4}, {"rated_W", 240}});
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("heaters[2]"));
    for (const char* id : {"hot_end.power_W", "hot_end.current_A", "hot_end.power_ratio", "supply_load"}) {
      QVERIFY2(result.find(id) && !result.quantity(id), id);
    }
    VERIFY_NEAR(valueOf(result, "bed.power_W"), 240, 1e-9);
    VERIFY_NEAR(valueOf(result, "frame.earth_ohm"), 0.04, 1e-12);
    QVERIFY(!result.complete);
  }

  void anImpossibleResistanceIsRefused() {
    Json negative = safetyInOrder();
    negative["heaters"][0]["ohm"] = -3;
    QCOMPARE(findingOf(evaluated(negative), "refused")->at, std::string("heaters[1].ohm"));
  }
};

FETTLE_TEST(TestSafetyCircuits)
#include "test_safety_circuits.moc"
