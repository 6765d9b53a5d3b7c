#include <QTest>
#include <cmath>
#include <numbers>

#include "core/steps/catalogue.h"
#include "core/steps/melt_rate.h"
#include "tests/support/described.h"
#include "tests/support/field_table.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

constexpr double plateau = 0.99, slope = 0.025, hinge = 10.4;

/// Flows 4 to 20 twice each, on a plateau of 0.99 that falls by 0.025 from 10.4 on; alternately the given
/// scatter above and below.
Json steps(double scatter, int from = 4, int to = 20) {
  Json rows = Json::array();
  for (int flow = from; flow <= to; ++flow) {
    const double level = plateau - slope * std::max(flow - hinge, 0.0);
    rows.push_back({{"flow_mm3_s", flow}, {"delivered", level + scatter}});
    rows.push_back({{"flow_mm3_s", flow}, {"delivered", level - scatter}});
  }
  return {{"steps", rows}};
}

}  // namespace

class TestMeltRate : public QObject {
  Q_OBJECT
  const Step& step = *findStep("melt-rate");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json full = steps(0.002);
    full["line_sizes"] = {{{"width_mm", 0.45}, {"height_mm", 0.2}}};
    full["temperature_C"] = 215;
    full["specific_heat_J_gK"] = 1.9;
    full["density_g_cm3"] = 1.24;
    Json level = full;
    level["steps"] = steps(0, 4, 9)["steps"];
    for (const auto& inputs : {full, level}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
  }

  // Built without scatter; limit by hand: 10.4 + 0.05·0.99/0.025 = 12.38.
  void recoversTheHinge() {
    const auto result = evaluated(steps(0));
    VERIFY_NEAR(valueOf(result, "plateau"), plateau, 1e-9);
    VERIFY_NEAR(valueOf(result, "slope"), slope, 1e-9);
    VERIFY_NEAR(valueOf(result, "hinge_flow"), hinge, 1e-9);
    VERIFY_NEAR(valueOf(result, "flow_limit"), 12.38, 1e-9);
    VERIFY_NEAR(valueOf(result, "flow_safe"), 0.9 * 12.38, 1e-6);
    QVERIFY(!findingOf(result, "hinge-not-bracketed"));
    QVERIFY(findingOf(result, "free-air"));
    QCOMPARE(result.verdict(), Verdict::none);
  }

  void safeFlowIsTheLowerLimitLessTheMargin() {
    Json inputs = steps(0.004);
    inputs["margin"] = 0.2;
    const auto result = evaluated(inputs);
    const Quantity& limit = *result.quantity("flow_limit");
    QVERIFY(limit.low && limit.high && *limit.low < limit.value && limit.value < *limit.high);
    QVERIFY(limit.value - *limit.low > 0.05);
    VERIFY_NEAR(valueOf(result, "flow_safe"), 0.8 * *limit.low, 1e-12);
    QCOMPARE(result.settings.size(), std::size_t(2));
    QCOMPARE(result.settings[1].id, std::string("flow_safe"));
  }

  // Masses of 600 mm³ at 1.24 g/cm³: commanded 0.744 g. The scale's e of 0.003 g is common to all steps, so
  // by hand it adds 0.003/0.744/√3 = 0.002328 to the plateau alone and 0.002328/(20 − 10.4) to the slope.
  void weighedStepsCarryTheScale() {
    Json inputs = steps(0);
    for (auto& row : inputs["steps"]) {
      row["mass_g"] = row["delivered"].get<double>() * 0.744;
      row.erase("delivered");
    }
    inputs["volume_mm3"] = 600;
    inputs["density_g_cm3"] = 1.24;
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "plateau"), plateau, 1e-9);
    VERIFY_NEAR(valueOf(result, "flow_limit"), 12.38, 1e-9);
    const double common = 0.003 / 0.744 / std::sqrt(3.0);
    VERIFY_NEAR(*result.quantity("plateau")->u, common, 1e-9);
    VERIFY_NEAR(*result.quantity("slope")->u, common / 9.6, 1e-9);
    for (auto& row : inputs["steps"]) {
      row["volume_mm3"] = 600;
      row["density_g_cm3"] = 1.24;
    }
    inputs.erase("volume_mm3");
    inputs.erase("density_g_cm3");
    VERIFY_NEAR(valueOf(evaluated(inputs), "plateau"), plateau, 1e-9);
  }

  // Up to 10 mm³/s nothing falls; up to 12 the limit of 12.38 lies beyond the data.
  void tooFewHighFlows() {
    const auto level = evaluated(steps(0, 4, 9));
    QVERIFY(findingOf(level, "hinge-not-bracketed"));
    VERIFY_NEAR(valueOf(level, "plateau"), plateau, 1e-12);
    QVERIFY(!level.quantity("flow_limit") && !level.quantity("flow_safe"));
    QVERIFY(level.settings.empty());
    const auto beyond = evaluated(steps(0.001, 4, 12));
    QVERIFY(findingOf(beyond, "limit-beyond-data"));
    QVERIFY(valueOf(beyond, "flow_safe") <= 0.9 * 12);
    QVERIFY(!beyond.quantity("flow_limit")->high);
    QCOMPARE(beyond.settings.size(), std::size_t(1));
    const auto onlyFalling = evaluated(steps(0.001, 13, 20));
    QVERIFY(findingOf(onlyFalling, "hinge-not-bracketed"));
  }

  // By hand: A = (0.45 − 0.2)·0.2 + π·0.04/4 = 0.0814159 mm²; 12.38/A = 152.06 mm/s.
  void speedsOfLineSizes() {
    Json inputs = steps(0);
    inputs["line_sizes"] = {{{"width_mm", 0.45}, {"height_mm", 0.2}},
                            {{"width_mm", 0.3}, {"height_mm", 0.3}}};
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "line_1.speed_limit"), 12.38 / 0.081415927, 1e-5);
    VERIFY_NEAR(valueOf(result, "line_2.speed_safe"), 0.9 * 12.38 / (std::numbers::pi * 0.0225), 1e-4);
    VERIFY_NEAR(chartOf(result, "delivered")->top->factor, 1 / 0.081415927, 1e-6);
    QCOMPARE(chartOf(result, "speeds")->series.size(), std::size_t(4));
    QVERIFY(!findingOf(result, "no-line-size") && findingOf(evaluated(steps(0)), "no-line-size"));
  }

  // By hand: 12.38·0.00124·1.9·190 = 5.5418 W; 40·(1 − 0.25) = 30 W.
  void heat() {
    StepContext context;
    context.sheet.hotEndPower = 40;
    Json inputs = steps(0);
    inputs["density_g_cm3"] = 1.24;
    inputs["temperature_C"] = 215;
    inputs["specific_heat_J_gK"] = 1.9;
    inputs["hold_duty"] = 0.25;
    auto result = evaluated(inputs, context);
    VERIFY_NEAR(valueOf(result, "heat_needed_W"), 5.541783, 1e-5);
    VERIFY_NEAR(valueOf(result, "heat_available_W"), 30, 1e-12);
    QVERIFY(findingOf(result, "melt-zone-limits"));
    context.sheet.hotEndPower = 7;
    QVERIFY(findingOf(evaluated(inputs, context), "heater-limits"));
    inputs.erase("hold_duty");
    QVERIFY(!evaluated(inputs, context).quantity("heat_available_W"));
    context.accepted["heater-control"]["hot_end.gain_C"] = plainQuantity(380.0, "C");  // 190/380 = 0.5
    VERIFY_NEAR(valueOf(evaluated(inputs, context), "heat_available_W"), 3.5, 1e-12);
  }

  void excludedRowsAreDrawnAndDoNotCount() {
    Json inputs = steps(0.002);
    inputs["steps"].push_back({{"flow_mm3_s", 6}, {"delivered", 0.6}});
    QVERIFY(findingOf(evaluated(inputs), "outlier"));
    inputs["steps"].back()["excluded"] = "strand torn";
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "plateau"), plateau, 1e-6);
    const auto& series = chartOf(result, "delivered")->series;
    QCOMPARE(series.at(1).role, SeriesRole::excluded);
    QCOMPARE(series.at(1).y, std::vector<double>{0.6});
  }

  // Three rows determine plateau, slope and hinge exactly: what is left is rounding, and no row is far off.
  void rowsThatLieOnTheLinesAreNoOutliers() {
    const Json three{{{"flow_mm3_s", 4}, {"delivered", 0.99}},
                     {{"flow_mm3_s", 10}, {"delivered", 0.99}},
                     {{"flow_mm3_s", 16}, {"delivered", 0.81}}};
    const auto result = evaluated({{"steps", three}});
    VERIFY_NEAR(valueOf(result, "hinge_flow"), 10.0, 1e-9);
    QVERIFY(!findingOf(result, "outlier"));
  }

  void plateauFarFromOneIsAFeedFault() {
    Json inputs = steps(0);
    for (auto& row : inputs["steps"]) {
      row["delivered"] = 0.9 * row["delivered"].get<double>();
    }
    QCOMPARE(findingOf(evaluated(inputs), "plateau-off")->see, std::string("filament-feed"));
  }

  void withoutEntriesEveryResultSaysWhatItLacks() {
    const auto empty = evaluated({{"line_sizes", {{{"width_mm", 0.45}, {"height_mm", 0.2}}}}});
    QVERIFY(!empty.complete);
    QCOMPARE(empty.missing, std::vector<std::string>{"steps"});
    for (const char* id : {"flow_limit", "flow_safe", "hinge_flow", "plateau", "line_1.speed_limit"}) {
      QCOMPARE(empty.find(id)->lacks, std::vector<std::string>{"steps"});
    }
    QVERIFY(chartOf(empty, "delivered")->isEmpty() && chartOf(empty, "speeds")->isEmpty());
  }

  // Built without scatter, so the other 32 rows give the same hinge.
  void rowsThatWaitForAnEntryLeaveTheOthers() {
    Json inputs = steps(0);
    inputs["steps"][3] = {{"flow_mm3_s", 5}, {"mass_g", 0.73}};
    inputs["steps"][5] = {{"flow_mm3_s", 6}};
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing,
             (std::vector<std::string>{"volume_mm3", "density_g_cm3", "steps[6].delivered"}));
    VERIFY_NEAR(valueOf(result, "hinge_flow"), hinge, 1e-9);
    QCOMPARE(chartOf(result, "delivered")->series.at(0).x.size(), std::size_t(32));
  }

  void massesWithoutDensityWait() {
    Json inputs = steps(0);
    for (auto& row : inputs["steps"]) {
      row["mass_g"] = row["delivered"].get<double>() * 0.744;
      row.erase("delivered");
    }
    inputs["volume_mm3"] = 600;
    const auto result = evaluated(inputs);
    QVERIFY(!result.complete);
    for (const char* id : {"plateau", "slope", "hinge_flow", "flow_limit", "flow_safe"}) {
      QCOMPARE(result.find(id)->lacks, std::vector<std::string>{"density_g_cm3"});
    }
    QCOMPARE(result.missing, std::vector<std::string>{"density_g_cm3"});
  }

  // Built without scatter: rows left out change nothing.
  void badRowsLeaveTheOthers() {
    Json inputs = steps(0);
    inputs["volume_mm3"] = 600;
    inputs["density_g_cm3"] = 1.24;
    inputs["steps"][0]["mass_g"] = 0.5;
    auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("steps[1]"));
    VERIFY_NEAR(valueOf(result, "hinge_flow"), hinge, 1e-9);
    inputs["steps"][0]["mass_g"] = 0.737;
    QVERIFY(!findingOf(evaluated(inputs), "refused"));
    Json percent = steps(0);
    percent["steps"][0]["delivered"] = 99;
    result = evaluated(percent);
    QCOMPARE(findingOf(result, "refused")->at, std::string("steps[1].delivered"));
    VERIFY_NEAR(valueOf(result, "hinge_flow"), hinge, 1e-9);
    Json sizes = steps(0);
    sizes["line_sizes"] = {{{"width_mm", 0.2}, {"height_mm", 0.3}},
                           {{"width_mm", 0.3}, {"height_mm", 0.3}}};
    result = evaluated(sizes);
    QCOMPARE(findingOf(result, "refused")->at, std::string("line_sizes[1]"));
    QVERIFY(!result.find("line_1.speed_limit") && result.quantity("line_2.speed_limit"));
  }

  void tooFewStepsAreRefused() {
    const auto result = evaluated(steps(0, 4, 5));
    QVERIFY(!result.complete);
    QCOMPARE(findingOf(result, "refused")->at, std::string("steps"));
    QCOMPARE(result.find("flow_safe")->why, findingOf(result, "refused")->text);
    QCOMPARE(chartOf(result, "delivered")->series.at(0).x.size(), std::size_t(4));
  }

  // 12.38·0.00124·1.9·190 W as above; what has a bad entry is withheld alone.
  void aRefusedSettingLeavesWhatDoesNotNeedIt() {
    StepContext context;
    context.sheet.hotEndPower = 40;
    Json inputs = steps(0);
    inputs.update({{"density_g_cm3", 1.24}, {"temperature_C", 215}, {"hold_duty", 0.25}});
    auto result = evaluated(inputs, context);
    VERIFY_NEAR(valueOf(result, "heat_available_W"), 30, 1e-12);
    QVERIFY(result.find("heat_needed_W") && !result.quantity("heat_needed_W"));
    QVERIFY(result.complete);
    inputs["specific_heat_J_gK"] = 1.9;
    inputs["margin"] = 2;
    result = evaluated(inputs, context);
    QVERIFY(!result.quantity("flow_safe") && result.quantity("flow_limit"));
    VERIFY_NEAR(valueOf(result, "heat_needed_W"), 5.541783, 1e-5);
    inputs["room_C"] = 900;
    result = evaluated(inputs, context);
    QVERIFY(!result.quantity("heat_needed_W") && result.quantity("heat_available_W"));
    QVERIFY(!findingOf(result, "melt-zone-limits") && !findingOf(result, "heater-limits"));
    QCOMPARE(undescribed(step, result), QString());
    QCOMPARE(unsoundCharts(result), QString());
  }

  void planOfFlows() {
    StepContext context;
    context.inForce["flow_limit"] = {20.0, {}};
    const Json rows = step.plans.at(0).rows(Json::object(), context);
    QCOMPARE(rows.size(), std::size_t(16));
    QCOMPARE(rows[0], (Json{{"flow_mm3_s", 8.0}}));   // 0.4 of the limit
    QCOMPARE(rows[7], (Json{{"flow_mm3_s", 34.0}}));  // 1.7 of it
    QCOMPARE(rows[15], (Json{{"flow_mm3_s", 8.0}}));
  }

  // Expected: README beside the file, plateau 0.991, hinge 10.6 (within 0.3), slope 0.026 as simulated; to
  // the digits shown by NumPy and SciPy 1.10 (least squares over a fine grid of hinges, profile limits by
  // brentq).
  void measuredMasses() {
    const QString path = outsideFile("inputs/melt-rate-pla.csv");
    SKIP_WITHOUT_OUTSIDE_FILE(path);
    const auto rows = tableOfFile(path, *findField(step.fields, "steps"));
    QVERIFY2(rows, rows ? "" : rows.error().c_str());
    const auto result = evaluated({{"steps", *rows}, {"density_g_cm3", 1.24}});
    VERIFY_NEAR(valueOf(result, "hinge_flow"), 10.6, 0.3);
    VERIFY_NEAR(valueOf(result, "plateau"), 0.991, 0.001);
    VERIFY_NEAR(valueOf(result, "slope"), 0.026, 0.0005);
    VERIFY_NEAR(valueOf(result, "plateau"), 0.990423387, 1e-7);
    VERIFY_NEAR(valueOf(result, "slope"), 0.025782014, 1e-7);
    const Quantity& at = *result.quantity("hinge_flow");
    VERIFY_NEAR(at.value, 10.590402796, 1e-6);
    VERIFY_NEAR(*at.low, 10.518620611, 1e-6);
    VERIFY_NEAR(*at.high, 10.661018520, 1e-6);
    const Quantity& limit = *result.quantity("flow_limit");
    VERIFY_NEAR(limit.value, 12.511167025, 1e-6);
    VERIFY_NEAR(*limit.low, 12.454711606, 1e-6);
    VERIFY_NEAR(*limit.high, 12.566912349, 1e-6);
    QVERIFY(!findingOf(result, "hinge-not-bracketed"));
  }
};

FETTLE_TEST(TestMeltRate)
#include "test_melt_rate.moc"
