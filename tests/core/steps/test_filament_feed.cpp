#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "core/steps/filament_feed.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

Json draw(double after, double speed) {
  return {{"commanded_mm", 100}, {"before_mm", 120}, {"after_mm", after}, {"speed_mm_s", speed}};
}

/// Three draws at 2 mm/s: 98.5, 99.0 and 98.8 mm of 100.
Json threeDraws() {
  return {{"draws", {draw(21.5, 2), draw(21.0, 2), draw(21.2, 2)}}};
}

/// The same with three draws more at 10 mm/s that draw `less` mm less.
Json twoSpeeds(double less) {
  Json inputs = threeDraws();
  for (const double after : {21.5, 21.0, 21.2}) {
    inputs["draws"].push_back(draw(after + less, 10));
  }
  return inputs;
}

Json withDiameters(Json inputs) {
  inputs["filament_diameters"] = {{{"first_mm", 1.74}, {"second_mm", 1.78}},
                                  {{"first_mm", 1.75}, {"second_mm", 1.77}},
                                  {{"first_mm", 1.76}, {"second_mm", 1.78}},
                                  {{"first_mm", 1.74}, {"second_mm", 1.76}},
                                  {{"first_mm", 1.75}, {"second_mm", 1.75}}};
  return inputs;
}

StepContext foundWith400() {
  StepContext context;
  context.asFound["feed_steps_per_mm"] = {400.0, {}};
  context.sheet.filament = 1.75;
  return context;
}

}  // namespace

/// Expected values are worked by hand beside each test, unless another source is named.
class TestFilamentFeed : public QObject {
  Q_OBJECT
  const Step& step = *findStep("filament-feed");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json full = withDiameters(twoSpeeds(3));
    full["lot"] = "A 17";
    full["drying_C"] = 50;
    full["drying_h"] = 6;
    full["mass_before_g"] = 812.4;
    full["mass_after_g"] = 810.9;
    for (const Json& inputs : {full, threeDraws(), twoSpeeds(0)}) {
      for (const StepContext& context : {foundWith400(), StepContext{}}) {
        const auto result = evaluated(inputs, context);
        QCOMPARE(undescribed(step, result), QString());
        QCOMPARE(unsoundCharts(result), QString());
      }
    }
  }

  // Ratios 0.985, 0.990, 0.988: mean 2.963/3, s² = 6.3333e-6. With the rule (r 0.5, e 0.3):
  // u² = 6.3333e-6/3 + (2·0.25/12)/100²/3 + (0.3/100)²/3 = 2.1111e-6 + 1.3889e-6 + 3e-6 = 6.5e-6;
  // dof = 6.5²/(2.1111²/2) = 18.960. Steps: 400/0.9876667 = 404.9949, relative u the same.
  void workedExample() {
    const auto result = evaluated(threeDraws(), foundWith400());
    const Quantity& ratio = *result.quantity("drawn_ratio");
    VERIFY_NEAR(ratio.value, 2.963 / 3, 1e-12);
    VERIFY_NEAR(*ratio.u, std::sqrt(6.5e-6), 1e-9);
    VERIFY_NEAR(ratio.dof, 18.960, 0.001);
    const Quantity& feed = *result.quantity("feed_steps_per_mm");
    VERIFY_NEAR(feed.value, 404.9949, 1e-4);
    VERIFY_NEAR(*feed.u, 404.9949 * std::sqrt(6.5e-6) / 0.9876667, 1e-5);
    QCOMPARE(result.settings.size(), std::size_t(1));
    QCOMPARE(result.settings[0].asFound.number, std::optional(400.0));
    VERIFY_NEAR(*result.settings[0].proposed.number, 404.9949, 1e-4);
    QVERIFY(findingOf(result, "slip-unknown"));
    QVERIFY(!findingOf(result, "feed-as-it-is"));
  }

  // A limit of error counts once however many draws there are, twice where two instruments are at work.
  void theLimitOfErrorIsNotDivided() {
    Json inputs = threeDraws();
    inputs["draws"] = {draw(21, 2), draw(21, 2), draw(21, 2), draw(21, 2)};
    inputs["instruments"] = {{"before_mm", {{"name", "rule"}, {"r", 0}, {"e", 0.3}}},
                             {"after_mm", {{"name", "rule"}, {"r", 0}, {"e", 0.3}}}};
    VERIFY_NEAR(*evaluated(inputs).quantity("drawn_ratio")->u, 0.003 / std::sqrt(3.0), 1e-12);
    inputs["instruments"]["after_mm"]["name"] = "another rule";
    VERIFY_NEAR(*evaluated(inputs).quantity("drawn_ratio")->u, 0.003 * std::sqrt(2.0 / 3), 1e-12);
  }

  void withoutTheStepsAsFoundOnlyTheRatio() {
    const auto result = evaluated(threeDraws());
    QVERIFY(result.quantity("drawn_ratio"));
    QVERIFY(result.find("feed_steps_per_mm") && !result.quantity("feed_steps_per_mm"));
    QVERIFY(result.settings.empty());
  }

  // 3 mm less at 10 mm/s. Slope −0.03/8 = −0.00375; its scatter: residual s² = 4·6.3333e-6/4, over
  // Σ(v − 6)² = 6·16 = 96, u² = 6.3333e-6/96 + (0.5/12)/100²/96 = 1.094e-7, t = −11.3: significant.
  // Slip 1 − 0.9576667/0.9876667 = 0.030375.
  void slipLeavesTheSlowestSpeed() {
    const auto result = evaluated(twoSpeeds(3), foundWith400());
    QVERIFY(findingOf(result, "slip"));
    VERIFY_NEAR(valueOf(result, "drawn_ratio"), 2.963 / 3, 1e-12);
    VERIFY_NEAR(valueOf(result, "feed_steps_per_mm"), 404.9949, 1e-4);
    VERIFY_NEAR(valueOf(result, "speed_1.speed"), 2, 0);
    VERIFY_NEAR(valueOf(result, "speed_2.speed"), 10, 0);
    VERIFY_NEAR(valueOf(result, "speed_2.drawn_ratio"), 2.963 / 3 - 0.03, 1e-12);
    VERIFY_NEAR(valueOf(result, "speed_2.slip"), 0.030375, 1e-6);
    QVERIFY(!result.find("speed_1.slip"));
    const auto& series = chartOf(result, "drawn")->series;
    QCOMPARE(series.at(0).x, (std::vector<double>{2, 2, 2}));
    QCOMPARE(series.at(1).role, SeriesRole::fault);
    QCOMPARE(series.at(1).x, (std::vector<double>{10, 10, 10}));
    QCOMPARE(series.at(2).x, (std::vector<double>{2, 10}));  // the mean of each speed, with its U
    VERIFY_NEAR(series.at(2).y.at(1), 2.963 / 3 - 0.03, 1e-12);
    const double half = *expandedUncertainty(*result.quantity("speed_2.drawn_ratio"));
    VERIFY_NEAR(series.at(4).y.back() - series.at(4).y.front(), 2 * half, 1e-12);
  }

  // Pooled scatter s² = 6.3333e-6 with 4 degrees of freedom; ratios all but equal to q =
  // 0.9576667/0.9876667: u² = [s²·(1 + q²)/3 + (0.5/12)/100²/3·(1 + q²)]/0.9876667². No limit of error.
  void slipCarriesScatterAndResolutionOnly() {
    const StepResult result = evaluated(twoSpeeds(3));
    const Quantity& slip = *result.quantity("speed_2.slip");
    const double q = 0.95766667 / 0.98766667;
    VERIFY_NEAR(*slip.u, std::sqrt((6.33333e-6 + 4.16667e-6) / 3 * (1 + q * q)) / 0.98766667, 1e-8);
    QVERIFY(slip.dof > 4 && slip.dof < 20);
  }

  // 0.2 mm less is less than the rule's resolution and the scatter show: slope −0.00025, u 0.00033, t =
  // −0.8.
  void aFallWithinTheScatterLeavesAllDraws() {
    const auto result = evaluated(twoSpeeds(0.2), foundWith400());
    QVERIFY(!findingOf(result, "slip"));
    VERIFY_NEAR(valueOf(result, "drawn_ratio"), 2.963 / 3 - 0.001, 1e-12);
    QCOMPARE(chartOf(result, "drawn")->series.at(0).x.size(), std::size_t(6));
  }

  void moreAtHigherSpeedIsNoSlip() { QVERIFY(!findingOf(evaluated(twoSpeeds(-3)), "slip")); }

  void exactReadingsThatAgreeAreNoSlip() {
    Json inputs{{"draws", {draw(20.1, 1), draw(20.1, 3), draw(20.1, 7), draw(20.1, 9)}}};
    inputs["instruments"] = {{"before_mm", {{"r", 0}, {"e", 0}}}, {"after_mm", {{"r", 0}, {"e", 0}}}};
    QVERIFY(!findingOf(evaluated(inputs), "slip"));
    inputs["draws"][3]["after_mm"] = 21.1;
    inputs["draws"][2]["after_mm"] = 20.8;
    inputs["draws"][1]["after_mm"] = 20.3;
    QVERIFY(findingOf(evaluated(inputs), "slip"));
  }

  // Means of the places 1.76, 1.76, 1.77, 1.75, 1.75: mean 1.758, s² = 7e-5. Caliper zeroed (r 0.01, e
  // 0.01): u² = 7e-5/5 + 1e-4/(12·10) + 1e-4/3 = 1.4e-5 + 8.3333e-7 + 3.3333e-5. Flow (1.758/1.75)² − 1 =
  // 0.0091637.
  void diameters() {
    const auto result = evaluated(withDiameters(threeDraws()), foundWith400());
    const Quantity& mean = *result.quantity("diameter_mean");
    const double u = std::sqrt(1.4e-5 + 1e-4 / 120 + 1e-4 / 3);
    VERIFY_NEAR(mean.value, 1.758, 1e-12);
    VERIFY_NEAR(*mean.u, u, 1e-9);
    VERIFY_NEAR(valueOf(result, "ovality"), 0.04, 1e-12);
    VERIFY_NEAR(*result.quantity("ovality")->u, 0.01 * std::sqrt(2.0 / 12), 1e-12);
    VERIFY_NEAR(valueOf(result, "flow_effect"), 0.0091637, 1e-7);
    VERIFY_NEAR(*result.quantity("flow_effect")->u, 2 * 1.758 / (1.75 * 1.75) * u, 1e-9);
    QVERIFY(!findingOf(result, "diameter-off"));  // U = 0.017
    QVERIFY(!evaluated(withDiameters(threeDraws())).quantity("flow_effect"));
    Json thick = withDiameters(threeDraws());
    for (auto& row : thick["filament_diameters"]) {
      row["first_mm"] = 1.82;
      row["second_mm"] = 1.82;
    }
    QVERIFY(findingOf(evaluated(thick, foundWith400()), "diameter-off"));
  }

  // (500 − 498)/500 = 0.4 %; u = 0.01·√(2/12)/500·100.
  void moisture() {
    Json inputs = threeDraws();
    inputs["mass_before_g"] = 500;
    inputs["mass_after_g"] = 498;
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "moisture_lost"), 0.4, 1e-12);
    VERIFY_NEAR(*result.quantity("moisture_lost")->u, 0.002 * std::sqrt(2.0 / 12), 1e-12);
    inputs["mass_after_g"] = 501;
    QVERIFY(findingOf(evaluated(inputs), "mass-gained"));
  }

  void excludedRowsAreDrawnAndDoNotCount() {
    Json inputs = threeDraws();
    inputs["draws"].push_back(draw(60, 2));
    inputs["draws"].back()["excluded"] = "filament broke";
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "drawn_ratio"), 2.963 / 3, 1e-12);
    QCOMPARE(chartOf(result, "drawn")->series.at(1).role, SeriesRole::excluded);
    inputs["draws"].back().erase("excluded");
    QVERIFY(findingOf(evaluated(inputs), "outlier"));
  }

  void oneDrawAndDrawsWithoutSpeed() {
    const auto one = evaluated({{"draws", {draw(21, 2)}}});
    QVERIFY(findingOf(one, "single-reading"));
    Json inputs = threeDraws();
    for (auto& row : inputs["draws"]) {
      row.erase("speed_mm_s");
    }
    VERIFY_NEAR(valueOf(evaluated(inputs), "drawn_ratio"), 2.963 / 3, 1e-12);
  }

  // By hand: 400 steps per mm on arrival, 410 in force while it was measured: 410/0.9876667 = 415.1198.
  void theFeedInForceCountsAndNotTheOneOnArrival() {
    StepContext context = foundWith400();
    context.inForce["feed_steps_per_mm"] = {410.0, {}};
    const auto result = evaluated(threeDraws(), context);
    VERIFY_NEAR(valueOf(result, "feed_steps_per_mm"), 415.1198, 1e-4);
    QCOMPARE(result.settings[0].asFound.number, std::optional(400.0));
    QCOMPARE(result.settings[0].inForce.number, std::optional(410.0));
  }

  void diametersAndMassesNeedNoDraws() {
    Json inputs = withDiameters(Json::object());
    inputs["mass_before_g"] = 500;
    const auto result = evaluated(inputs, foundWith400());
    QVERIFY(!result.complete);
    QCOMPARE(result.missing, std::vector<std::string>{"draws"});
    QCOMPARE(result.find("drawn_ratio")->lacks, std::vector<std::string>{"draws"});
    QCOMPARE(result.find("feed_steps_per_mm")->lacks, std::vector<std::string>{"draws"});
    VERIFY_NEAR(valueOf(result, "diameter_mean"), 1.758, 1e-12);
    VERIFY_NEAR(valueOf(result, "flow_effect"), 0.0091637, 1e-7);
    QVERIFY(result.find("moisture_lost") && !result.quantity("moisture_lost"));
    inputs["mass_after_g"] = 498;
    VERIFY_NEAR(valueOf(evaluated(inputs), "moisture_lost"), 0.4, 1e-12);
    QVERIFY(!chartOf(result, "diameters")->isEmpty() && chartOf(result, "drawn")->isEmpty());
  }

  // By hand: without the second draw the ratios 0.985 and 0.988 are left, mean 0.9865.
  void aHalfTypedBadOrRefusedDrawLeavesTheOthers() {
    for (const auto& [cell, code] :
         {std::pair{Json(), ""}, {Json("low"), "draws[2].after_mm"}, {Json(120), "draws[2]"}}) {
      Json inputs = threeDraws();
      inputs["draws"][1]["after_mm"] = cell;
      const auto result = evaluated(inputs, foundWith400());
      VERIFY_NEAR(valueOf(result, "drawn_ratio"), 0.9865, 1e-12);
      QVERIFY(result.quantity("feed_steps_per_mm") && result.complete);
      if (cell.is_null()) {
        QCOMPARE(result.missing, std::vector<std::string>{"draws[2].after_mm"});
      } else {
        QCOMPARE(findingOf(result, "refused")->at, std::string(code));
      }
    }
    Json place = withDiameters(threeDraws());
    place["filament_diameters"][2]["first_mm"] = 99;
    const auto result = evaluated(place);
    QCOMPARE(findingOf(result, "refused")->at, std::string("filament_diameters[3].first_mm"));
    VERIFY_NEAR(valueOf(result, "diameter_mean"), 1.755, 1e-12);  // (1.76 + 1.76 + 1.75 + 1.75)/4
  }

  void noDrawThatCameNearerIsRefused() {
    Json backwards = withDiameters({{"draws", {draw(130, 2)}}});
    const auto result = evaluated(backwards, foundWith400());
    QVERIFY(!result.complete);
    QCOMPARE(findingOf(result, "refused")->at, std::string("draws[1]"));
    QCOMPARE(result.find("feed_steps_per_mm")->why, findingOf(result, "refused")->text);
    QVERIFY(result.quantity("diameter_mean"));
  }

  void planOfDraws() {
    const Json rows = step.plans.at(0).rows(Json::object(), StepContext{});
    QCOMPARE(rows.size(), std::size_t(6));
    Json inputs{{"draws", rows}};
    for (auto& row : inputs["draws"]) {
      row["before_mm"] = 120;
      row["after_mm"] = 21;
    }
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "drawn_ratio"), 0.99, 1e-12);
    QVERIFY(!findingOf(result, "slip-unknown"));
    QCOMPARE(result.find("speed_1.speed")->names, std::vector<std::string>{"1 mm/s"});
  }
};

FETTLE_TEST(TestFilamentFeed)
#include "test_filament_feed.moc"
