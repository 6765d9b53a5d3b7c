#include "tests/support/config_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Rows of a configuration: which setting they are of, which are refused, what their values may look like.
class TestConfigRows : public QObject {
  Q_OBJECT
  const Step& step = *findStep("config-review");

  StepResult evaluated(const Json& inputs, const StepContext& context = bench()) const {
    return evaluatedOrEnd(step, inputs, context);
  }
  StepResult evaluated(const StepContext& context) const { return evaluated(Json::object(), context); }
  StepResult listed(const Json& rows, const StepContext& context = bench()) const {
    return evaluated({{"found", rows}}, context);
  }

 private slots:
  void matchedRowsAreFoundAndCount() {
    const auto result =
        listed({row("steps, axis x", "100", "x.steps_per_mm"), row("kind", "peak", "x.current_is"),
                row("top", 250, "y.top_speed"), row("colour", "green", "")});
    QCOMPARE(result.found.size(), std::size_t(3));
    QCOMPARE(result.found.at("x.steps_per_mm").number, std::optional(100.0));
    QCOMPARE(result.found.at("x.current_is").text, std::string("peak"));
    QCOMPARE(result.found.at("y.top_speed").number, std::optional(250.0));
    QVERIFY(findingOf(result, "steps-per-mm"));
    QVERIFY(says(findingOf(result, "differs-from-as-found"), "80"));
    QVERIFY(says(findingOf(result, "not-matched"), "not used: row 4, colour."));
    QVERIFY(!findingOf(listed({row("steps", "80", "x.steps_per_mm")}), "differs-from-as-found"));
  }

  void unmatchedRowsAreNotUsed() {
    const auto result = listed({row("steps per mm x", "100", "")});
    QVERIFY(says(findingOf(result, "match-suggested"), "Steps per mm x"));
    QVERIFY(result.found.empty() && !findingOf(result, "steps-per-mm"));
    QVERIFY(!findingOf(result, "not-matched"));
  }

  void manyUnmatchedRowsAreCounted() {
    Json rows = Json::array();
    for (int i = 0; i < 7; ++i) {
      rows.push_back(row("colour", "green", ""));
    }
    const auto result = listed(rows);
    QVERIFY(says(findingOf(result, "not-matched"), "row 5, colour; and 2 more."));
    QVERIFY(!says(findingOf(result, "not-matched"), "row 6"));
  }

  void suggestions() {
    for (const auto& [name, setting] : {std::pair{"max travel x", "travel_max_x"},
                                        {"lowest_stroke-Y", "travel_min_y"},
                                        {"axis Z steps per mm", "z.steps_per_mm"},
                                        {"feeder steps/mm", "feed_steps_per_mm"},
                                        {"probeOffsetX", "probe_offset_x"},
                                        {"net upper y", "probing_max_y"},
                                        {"nozzle temperature maximum", "hot_end_max_C"},
                                        {"bed max temp", "bed_max_C"},
                                        {"X acceleration", "x.acceleration"},
                                        {"motor current y", "y.motor_current_A"}}) {
      QCOMPARE(suggestedSetting(name).value_or("none"), std::string(setting));
    }
    QVERIFY(!suggestedSetting("acceleration"));
    QVERIFY(!suggestedSetting("steps per mm x y"));  // of two axes alike
    QVERIFY(!suggestedSetting(""));
  }

  // 18 m/s² = 18000 mm/s², 800 mA = 0.8 A, 9000 mm/min = 150 mm/s.
  void valuesMayCarryUnits() {
    VERIFY_NEAR(*valueOf("18 m/s2", "x.acceleration")->number, 18000, 1e-9);
    VERIFY_NEAR(*valueOf("800 mA", "x.motor_current_A")->number, 0.8, 1e-12);
    VERIFY_NEAR(*valueOf("9000 mm/min", "x.top_speed")->number, 150, 1e-9);
    VERIFY_NEAR(*valueOf(" 80,5 ", "x.steps_per_mm")->number, 80.5, 1e-12);
    VERIFY_NEAR(*valueOf("-23,5 mm", "probe_offset_x")->number, -23.5, 1e-12);
    QVERIFY(!valueOf("800", "x.motor_current_A"));  // mA without saying so
    QVERIFY(!valueOf("80 kg", "x.steps_per_mm"));
    QVERIFY(!valueOf("rapid", "x.top_speed"));
    QVERIFY(!valueOf("mean", "x.current_is"));
  }

  void contradictionsAreRefused() {
    const Json two{row("a", "80", "x.steps_per_mm"), row("b", "81", "x.steps_per_mm")};
    QCOMPARE(findingOf(listed(two), "refused")->at, std::string("found[2]"));
    const Json same{{"found", {row("a", "80", "x.steps_per_mm"), row("b", "80.0", "x.steps_per_mm")}}};
    QVERIFY(refusalOf(step, same, bench()).isEmpty());
    QVERIFY(refusalOf(step, {{"found", {row("a", "much", "x.steps_per_mm")}}}, bench()).contains("much"));
    QVERIFY(!refusalOf(step, {{"found", {row("a", "1", "x.no_such_setting")}}}, bench()).isEmpty());
  }

  // What is refused is known of no setting: neither the row nor the value before is judged by.
  void aRefusedRowLeavesTheOthers() {
    for (const Json& rows : {Json{row("a", "much", "x.steps_per_mm"), row("top", "200", "x.top_speed")},
                             Json{row("a", "100", "x.steps_per_mm"), row("b", "81", "x.steps_per_mm"),
                                  row("c", "100", "x.steps_per_mm"), row("top", "200", "x.top_speed")}}) {
      const auto result = listed(rows);
      QVERIFY(!result.complete);
      QCOMPARE(result.found.size(), std::size_t(1));
      QCOMPARE(result.found.at("x.top_speed").number, std::optional(200.0));
      QVERIFY(result.find("x.steps_per_mm_ratio") && !result.quantity("x.steps_per_mm_ratio"));
      QVERIFY(!findingOf(result, "steps-per-mm"));
      VERIFY_NEAR(valueOf(result, "x.steps_per_mm_expected"), 80, 1e-12);
      VERIFY_NEAR(valueOf(result, "y.steps_per_mm_ratio"), 1, 1e-12);
      VERIFY_NEAR(valueOf(result, "x.current_ratio"), 0.8, 1e-12);
    }
  }

  void aValueAsFoundThatCannotBeLeavesTheOthers() {
    const auto result = evaluated(with(bench(), "x.steps_per_mm", -80));
    QCOMPARE(findingOf(result, "refused")->at, std::string("as_found.x.steps_per_mm"));
    QVERIFY(!result.quantity("x.steps_per_mm_ratio") && !findingOf(result, "steps-per-mm"));
    VERIFY_NEAR(valueOf(result, "y.steps_per_mm_ratio"), 1, 1e-12);
    VERIFY_NEAR(valueOf(result, "inconsistencies"), 0, 0);
  }

  // A finding leads to the row whose value it is about; what was known before has none.
  void findingsNameTheirRow() {
    const auto result = listed({row("colour", "green", ""), row("steps", "100", "x.steps_per_mm")});
    QCOMPARE(findingOf(result, "steps-per-mm")->at, std::string("found[2]"));
    QCOMPARE(findingOf(result, "differs-from-as-found")->at, std::string("found[2]"));
    QCOMPARE(findingOf(evaluated(with(bench(), "x.steps_per_mm", 100)), "steps-per-mm")->at, std::string());
  }

  // Adopting a shaper or an acceleration makes what follows from it due.
  void whatItsSettingsSetOff() {
    for (const char* id : {"x.shaper", "y.shaper_hz", "z.acceleration"}) {
      QCOMPARE(step.setting(id)->disturbs, std::string("shaper_adopted"));
    }
    QCOMPARE(step.setting("x.steps_per_mm")->disturbs, std::string());
    QCOMPARE(step.setting("x.current_is")->words.size(), std::size_t(2));
  }

  // As found without rows: the same bounds hold as for what is typed.
  void impossibleValuesAsFoundAreRefused() {
    const auto refused = [&](const char* id, Json value) {
      return refusalOf(step, {{"as_found", {{id, std::move(value)}}}}, bench());
    };
    QVERIFY(refused("x.steps_per_mm", "eighty")
                .endsWith("x.steps_per_mm: \"eighty\" is not a number; a number in steps/mm is needed."));
    QVERIFY(refused("x.steps_per_mm", 0).contains("x.steps_per_mm: 0 is not possible"));
    QVERIFY(refused("x.steps_per_mm", -80).contains("not possible"));
    QVERIFY(refused("x.steps_per_mm", 1e300).contains("1e+300 is not possible"));
    QVERIFY(refused("x.current_is", "mean").contains("none of rms, peak"));
    QVERIFY(refused("x.steps_per_mm", 80).isEmpty());
    QVERIFY(refused("a.setting_of_another_step", "word").isEmpty());
  }

  void incomplete() {
    QCOMPARE(evaluated(Json::object(), {}).missing, std::vector<std::string>{"found"});
    const auto result = listed({row("steps", "", "x.steps_per_mm"), row("top", "200", "x.top_speed")});
    QCOMPARE(result.missing, std::vector<std::string>{"found[1].value"});
    QVERIFY(result.complete);
    QCOMPARE(result.found.size(), std::size_t(1));
    QCOMPARE(result.found.at("x.top_speed").number, std::optional(200.0));
    VERIFY_NEAR(valueOf(result, "x.steps_per_mm_ratio"), 1, 1e-12);  // 80 as known before
  }

  void excludedRowsDoNotCount() {
    Json rows{row("a", "80", "x.steps_per_mm"), row("b", "100", "x.steps_per_mm")};
    rows[1]["excluded"] = "of another machine";
    QVERIFY(!findingOf(listed(rows), "steps-per-mm"));
  }
};

FETTLE_TEST(TestConfigRows)
#include "test_config_rows.moc"
