#include <QTest>
#include <cmath>

#include "core/maths/distributions.h"
#include "core/steps/catalogue.h"
#include "core/steps/probe_position.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// A bed of 300 × 300 mm whose carriage goes a little beyond it on the left.
StepContext benchWithProbe() {
  StepContext context;
  context.sheet.travelMinX = -5;
  context.sheet.travelMaxX = 300;
  context.sheet.travelMinY = 0;
  context.sheet.travelMaxY = 310;
  context.sheet.bedMinX = 0;
  context.sheet.bedMaxX = 300;
  context.sheet.bedMinY = 0;
  context.sheet.bedMaxY = 300;
  for (const auto& [id, value] : {std::pair{"probe_offset_x", 28.0},
                                  {"probe_offset_y", -8.0},
                                  {"probing_min_x", 15.0},
                                  {"probing_max_x", 285.0},
                                  {"probing_min_y", 15.0},
                                  {"probing_max_y", 285.0},
                                  {"probing_columns", 6.0},
                                  {"probing_rows", 6.0}}) {
    context.asFound[id] = {value, {}};
  }
  return context;
}

Json mark(double nozzleX, double nozzleY, double probeX, double probeY) {
  return {{"nozzle_x", nozzleX}, {"nozzle_y", nozzleY}, {"probe_x", probeX}, {"probe_y", probeY}};
}

/// Offsets 31.2, 31.4, 31.6 in x and −8.1, −8.2, −8.3 in y.
Json threeMarks() {
  return {{"marks", {mark(50, 50, 18.8, 58.1), mark(150, 150, 118.6, 158.2), mark(250, 60, 218.4, 68.3)}}};
}

}  // namespace

class TestProbePosition : public QObject {
  Q_OBJECT
  const Step& step = *findStep("probe-position");

 private slots:
  void everythingIsDescribed() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    QVERIFY2(result, result ? "" : result.error().c_str());
    QCOMPARE(undescribed(step, *result), QString());
    QCOMPARE(unsoundCharts(*result), QString());
  }

  // By hand: mean 31.4, s = 0.2; u² = 0.2²/3 + 2·0.3²/3 = 0.0733333 (each column's alignment counts once);
  // Welch–Satterthwaite: ν = u⁴/((0.2²/3)²/2) = 60.5.
  void offsetIsTheMeanOfTheMarks() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    const Quantity* x = result->quantity("probe_offset_x");
    QVERIFY(x);
    VERIFY_NEAR(x->value, 31.4, 1e-9);
    VERIFY_NEAR(*x->u, std::sqrt(0.22 / 3), 1e-9);
    VERIFY_NEAR(x->dof, 60.5, 1e-6);
    VERIFY_NEAR(valueOf(*result, "probe_offset_y"), -8.2, 1e-9);
    QVERIFY(!findingOf(*result, "single-reading"));
  }

  // By hand: 31.4 − 28 = 3.4 mm, far outside ±1 mm with a guard band of 1.67·0.27 = 0.45 mm; −8.2 + 8 =
  // −0.2 mm is inside by more than 0.43 mm.
  void changeIsJudged() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    VERIFY_NEAR(valueOf(*result, "probe_offset_x_change"), 3.4, 1e-9);
    QCOMPARE(verdictOf(*result, "probe_offset_x_change"), Verdict::fail);
    QCOMPARE(verdictOf(*result, "probe_offset_y_change"), Verdict::pass);
    QCOMPARE(result->verdict(), Verdict::fail);
    QCOMPARE(result->settings.size(), std::size_t(2));
    QCOMPARE(*result->settings[0].asFound.number, 28.0);
  }

  // By hand: x from max(−5 + 31.4, 0 + 5) = 26.4 to min(300 + 31.4, 295) = 295;
  // y from max(0 − 8.2, 5) = 5 to min(310 − 8.2, 295) = 295. Only the first depends on the offset.
  void reachIsTheTravelOfTheTipOnTheBed() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    VERIFY_NEAR(valueOf(*result, "safe_min_x"), 26.4, 1e-9);
    QCOMPARE(valueOf(*result, "safe_max_x"), 295.0);
    QCOMPARE(valueOf(*result, "safe_min_y"), 5.0);
    QCOMPARE(valueOf(*result, "safe_max_y"), 295.0);
    QVERIFY(result->quantity("safe_min_x")->u.has_value());
    QVERIFY(!result->quantity("safe_max_x")->u.has_value());
  }

  // By hand: planned x 15, 69, ..., 285 lands 3.4 mm further right: 288.4 at most, on the bed and outside
  // the margin. The carriage goes to planned − 28: −13 for the first column, outside −5: 6 points.
  void gridPointsOutOfReach() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    QCOMPARE(valueOf(*result, "points_off_bed"), 0.0);
    QCOMPARE(valueOf(*result, "points_in_margin"), 0.0);
    QCOMPARE(valueOf(*result, "points_out_of_reach"), 6.0);
    QCOMPARE(findingOf(*result, "points-out-of-reach")->severity, Severity::fault);
    QVERIFY(findingOf(*result, "points-out-of-reach")->text.find("\u221213.0") != std::string::npos);
  }

  // By hand: an offset as found of 0 sends the tip 31.4 mm too far: 285 lands at 316.4 (off by 16.4 mm),
  // 231 at 262.4; y −8.2: 15 lands at 6.8, inside the margin of 8 mm asked for here. Off the bed: 6 points
  // of the last column; in the margin: the other five of the first row.
  void gridPointsOffTheBed() {
    StepContext context = benchWithProbe();
    context.asFound["probe_offset_x"] = {0.0, {}};
    context.asFound["probe_offset_y"] = {0.0, {}};
    Json inputs = threeMarks();
    inputs["margin"] = 8;
    const auto result = evaluateJson(step, inputs, context);
    QCOMPARE(valueOf(*result, "points_off_bed"), 6.0);
    QCOMPARE(valueOf(*result, "points_in_margin"), 5.0);
    QCOMPARE(valueOf(*result, "points_out_of_reach"), 0.0);
    const Finding* off = findingOf(*result, "points-off-bed");
    QVERIFY(off && off->severity == Severity::fault);
    QVERIFY(off->text.find("16.4") != std::string::npos);
    const Chart* plan = chartOf(*result, "plan");
    const auto series = std::find_if(plan->series.begin(), plan->series.end(),
                                     [](const Series& s) { return s.role == SeriesRole::fault; });
    QVERIFY(series != plan->series.end());
    QCOMPARE(series->x.size(), std::size_t(6));
  }

  // By hand: planned 15, 15 lands 3.4 mm further right and 0.2 mm lower, √(3.4² + 0.2²) = 3.4 mm away. No
  // two groups of points have one colour.
  void planTellsPlannedFromLanding() {
    const auto result = evaluateJson(step, threeMarks(), benchWithProbe());
    const Chart* plan = chartOf(*result, "plan");
    const auto named = [&](const char* name) {
      const auto series = std::find_if(plan->series.begin(), plan->series.end(),
                                       [&](const Series& s) { return s.name == name; });
      return series == plan->series.end() ? Series{} : *series;
    };
    const Series shift = named("lands 3.4 mm from where it is planned");
    QCOMPARE(shift.x.size(), std::size_t(2));
    VERIFY_NEAR(shift.x[0], 15, 1e-9);
    VERIFY_NEAR(shift.x[1], 18.4, 1e-9);
    VERIFY_NEAR(shift.y[1], 14.8, 1e-9);
    const Series planned = named("planned points"), landing = named("landing points"),
                 marks = named("touch marks");
    QVERIFY(!planned.x.empty() && !landing.x.empty() && !marks.x.empty());
    QVERIFY(planned.hue != landing.hue && planned.hue != marks.hue && landing.hue != marks.hue);
  }

  void gridOfTheInputsComesBeforeTheOneAsFound() {
    Json inputs = threeMarks();
    inputs["probing_min_x"] = 69;
    QCOMPARE(valueOf(*evaluateJson(step, inputs, benchWithProbe()), "points_out_of_reach"), 0.0);
  }

  // By hand: disc of radius 100, margin 5, tip 0, 0: the corner of a 2 × 2 grid at 70, 70 is 98.995 mm out,
  // 1.005 mm inside the edge: in the margin. With one corner at 72, 72 that one is 101.8 mm out and its two
  // neighbours, 72, -70 and -70, 72, are 100.4 mm out: off.
  void discBed() {
    StepContext context = benchWithProbe();
    context.sheet.bedShape = "disc";
    context.sheet.bedRadius = 100;
    context.sheet.travelMinX = context.sheet.travelMinY = -110;
    context.asFound["probe_offset_x"] = context.asFound["probe_offset_y"] = {0.0, {}};
    Json inputs{{"direct", {{"offset_x", 0}, {"offset_y", 0}}},
                {"probing_min_x", -70},
                {"probing_max_x", 70},
                {"probing_min_y", -70},
                {"probing_max_y", 70},
                {"probing_columns", 2},
                {"probing_rows", 2}};
    auto result = evaluateJson(step, inputs, context);
    QVERIFY2(result, result ? "" : result.error().c_str());
    QCOMPARE(valueOf(*result, "points_in_margin"), 4.0);
    QCOMPARE(valueOf(*result, "safe_min_x"), -95.0);
    inputs["probing_max_x"] = 72;
    inputs["probing_max_y"] = 72;
    QCOMPARE(valueOf(*evaluateJson(step, inputs, context), "points_off_bed"), 3.0);
  }

  void nothingToReachIsAFault() {
    StepContext context = benchWithProbe();
    context.sheet.travelMaxX = -1;
    Json inputs{{"direct", {{"offset_x", 0}, {"offset_y", 0}}}};
    const auto result = evaluateJson(step, inputs, context);
    QVERIFY(findingOf(*result, "no-reach"));
    QCOMPARE(findingOf(*result, "no-reach")->severity, Severity::fault);
  }

  // One reading: u = sqrt(r²/12 + e²/3); steel rule r 0.5, e 0.3 (methods: common practice, no source).
  void oneDirectReading() {
    const auto result =
        evaluateJson(step, {{"direct", {{{"offset_x", 31.5}, {"offset_y", -8.0}}}}}, benchWithProbe());
    VERIFY_NEAR(*result->quantity("probe_offset_x")->u, std::sqrt(0.25 / 12 + 0.09 / 3), 1e-12);
    QVERIFY(findingOf(*result, "single-reading"));
  }

  void chosenInstrumentCounts() {
    Json inputs{{"marks", {mark(100, 100, 69, 108)}}};
    inputs["instruments"] = {{"nozzle_x", {{"name", "camera"}, {"r", 0}, {"e", 0.03}}},
                             {"probe_x", {{"name", "camera"}, {"r", 0}, {"e", 0.04}}}};
    const auto result = evaluateJson(step, inputs, benchWithProbe());
    VERIFY_NEAR(*result->quantity("probe_offset_x")->u, 0.05 / std::sqrt(3.0), 1e-12);
  }

  // By hand: mean of all five 31.72, without the last one 31.4.
  void outlierIsMarkedAndKept() {
    Json inputs{{"marks", Json::array()}};
    for (const double x : {31.3, 31.4, 31.5, 31.4, 33.0}) {
      inputs["marks"].push_back(mark(100, 100, 100 - x, 108));
    }
    const auto result = evaluateJson(step, inputs, benchWithProbe());
    QVERIFY(findingOf(*result, "outlier"));
    VERIFY_NEAR(valueOf(*result, "probe_offset_x"), 31.72, 1e-9);
    inputs["marks"][4]["excluded"] = "mark moved";
    const auto without = evaluateJson(step, inputs, benchWithProbe());
    QVERIFY(!findingOf(*without, "outlier"));
    VERIFY_NEAR(valueOf(*without, "probe_offset_x"), 31.4, 1e-9);
  }

  void unknownThingsAreWithheldWithTheReason() {
    const auto result = evaluateJson(step, threeMarks());
    QVERIFY(result && result->complete);
    QVERIFY(result->quantity("probe_offset_x"));
    for (const char* id : {"probe_offset_x_change", "safe_min_x", "points_off_bed"}) {
      QVERIFY2(result->find(id) && !result->find(id)->why.empty(), id);
    }
    QCOMPARE(result->verdict(), Verdict::none);
    QCOMPARE(undescribed(step, *result), QString());
  }

  // Without an offset nothing rests on a guess; each result says what it waits for.
  void withoutAnOffsetEveryResultSaysWhatItLacks() {
    const auto empty = evaluateJson(step, Json::object(), benchWithProbe());
    QVERIFY(empty && !empty->complete);
    QCOMPARE(empty->missing, std::vector<std::string>{"marks"});
    for (const char* id : {"probe_offset_x", "probe_offset_x_change", "safe_min_x", "points_off_bed"}) {
      QVERIFY2(empty->find(id) && !empty->quantity(id), id);
      QCOMPARE(empty->find(id)->lacks, std::vector<std::string>{"marks"});
    }
    QVERIFY(chartOf(*empty, "plan") && !chartOf(*empty, "plan")->isEmpty());  // bed and travel are known
    const auto nothing = evaluateJson(step, Json::object());
    QVERIFY(chartOf(*nothing, "plan")->isEmpty());
    QCOMPARE(unsoundCharts(*nothing), QString());
    QVERIFY(evaluateJson(step, {{"direct", {{"offset_x", 31}, {"offset_y", -8}}}})->missing.empty());
  }

  // By hand: the offsets of the first and the third mark, 31.2 and 31.6, have the mean 31.4.
  void aBadOrHalfTypedMarkLeavesTheOthers() {
    Json half = threeMarks();
    half["marks"][1]["probe_y"] = nullptr;
    const auto without = evaluateJson(step, half, benchWithProbe());
    QCOMPARE(without->missing, std::vector<std::string>{"marks[2].probe_y"});
    VERIFY_NEAR(valueOf(*without, "probe_offset_x"), 31.4, 1e-9);
    QVERIFY(without->complete);
    Json bad = threeMarks();
    bad["marks"][1]["probe_y"] = "left";
    const auto refused = evaluateJson(step, bad, benchWithProbe());
    QCOMPARE(findingOf(*refused, "refused")->at, std::string("marks[2].probe_y"));
    VERIFY_NEAR(valueOf(*refused, "probe_offset_x"), 31.4, 1e-9);
    bad["marks"] = bad["marks"][1];
    QCOMPARE(evaluateJson(step, bad, benchWithProbe())->find("safe_max_y")->lacks,
             std::vector<std::string>{"marks"});
  }

  void aContradictoryGridLeavesOffsetAndReach() {
    Json inputs = threeMarks();
    inputs["probing_min_x"] = 290;
    auto result = evaluateJson(step, inputs, benchWithProbe());
    QCOMPARE(findingOf(*result, "refused")->at, std::string("probing_min_x"));
    QVERIFY(!result->quantity("points_off_bed") && !result->quantity("points_out_of_reach"));
    VERIFY_NEAR(valueOf(*result, "safe_min_x"), 26.4, 1e-9);
    StepContext context = benchWithProbe();
    context.asFound["probing_rows"] = {2.5, {}};
    result = evaluateJson(step, threeMarks(), context);
    QCOMPARE(findingOf(*result, "refused")->at, std::string("as_found.probing_rows"));
    QVERIFY(!result->quantity("points_in_margin") && result->quantity("probe_offset_x_change"));
  }

  void aContradictorySheetLeavesWhatDoesNotRestOnIt() {
    StepContext context = benchWithProbe();
    std::swap(context.sheet.travelMinX, context.sheet.travelMaxX);
    const auto travel = evaluateJson(step, threeMarks(), context);
    QVERIFY(findingOf(*travel, "refused"));
    QVERIFY(!travel->quantity("safe_min_x") && !travel->quantity("points_out_of_reach"));
    QCOMPARE(valueOf(*travel, "points_off_bed"), 0.0);
    context = benchWithProbe();
    std::swap(context.sheet.bedMinY, context.sheet.bedMaxY);
    const auto bed = evaluateJson(step, threeMarks(), context);
    QVERIFY(findingOf(*bed, "refused"));
    QVERIFY(!bed->quantity("safe_min_x") && !bed->quantity("points_off_bed"));
    QCOMPARE(valueOf(*bed, "points_out_of_reach"), 6.0);
    VERIFY_NEAR(valueOf(*bed, "probe_offset_x"), 31.4, 1e-9);
  }

  void aRefusedMarginLeavesWhatNeedsNone() {
    Json inputs = threeMarks();
    inputs["margin"] = -1;
    const auto result = evaluateJson(step, inputs, benchWithProbe());
    QCOMPARE(findingOf(*result, "refused")->at, std::string("margin"));
    QVERIFY(!result->quantity("safe_min_x") && !result->quantity("points_in_margin"));
    QCOMPARE(valueOf(*result, "points_out_of_reach"), 6.0);
    QVERIFY(!chartOf(*result, "plan")->isEmpty());
    QCOMPARE(undescribed(step, *result), QString());
  }

  // By hand: a change of 31.4 − 31 = 0.4 mm from the offset in force; the carriage then goes to 15 − 31 =
  // −16, beyond −5, for the first column and to 69 − 31 = 38 for the second: 6 points out of reach, which
  // land 0.4 mm beside where they are planned.
  void theOffsetInForceCountsAndNotTheOneOnArrival() {
    StepContext context = benchWithProbe();
    context.inForce["probe_offset_x"] = {31.0, {}};
    const auto result = evaluateJson(step, threeMarks(), context);
    VERIFY_NEAR(valueOf(*result, "probe_offset_x_change"), 0.4, 1e-9);
    QCOMPARE(valueOf(*result, "points_out_of_reach"), 6.0);
    QCOMPARE(*result->settings[0].asFound.number, 28.0);
    QCOMPARE(*result->settings[0].inForce.number, 31.0);
  }

  // By hand: nozzle and, moved by 28, −8, tip reach x from 23 to 300 and y from 0 to 300 of the bed; a
  // quarter, three quarters and the middle of that, to whole mm.
  void planOfThreeMarks() {
    QCOMPARE(step.plans.size(), std::size_t(1));
    const Json rows = step.plans[0].rows(Json::object(), benchWithProbe());
    QCOMPARE(rows.size(), std::size_t(3));
    QCOMPARE(rows[0], (Json{{"nozzle_x", 92.0}, {"nozzle_y", 75.0}}));
    QCOMPARE(rows[2], (Json{{"nozzle_x", 162.0}, {"nozzle_y", 225.0}}));
    QVERIFY(step.plans[0].rows(Json::object(), StepContext{}).empty());
  }
};

FETTLE_TEST(TestProbePosition)
#include "test_probe_position.moc"
