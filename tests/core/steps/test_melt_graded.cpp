#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// A piece of 40 mm whose flow rises evenly from 5 to 25: 0.5 per mm.
Json graded() {
  return {{"graded", {{"bottom_value", 5}, {"top_value", 25}, {"height_mm", 40}}},
          {"bad_heights", {{{"last_good_mm", 14}, {"bad_height_mm", 16}}}}};
}

}  // namespace

/// The flow limit of melt-rate from a graded piece.
class TestMeltGraded : public QObject {
  Q_OBJECT
  const Step& step = *findStep("melt-rate");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json full = graded();
    full["line_sizes"] = {{{"width_mm", 0.45}, {"height_mm", 0.2}}};
    full["temperature_C"] = 215;
    full["specific_heat_J_gK"] = 1.9;
    full["density_g_cm3"] = 1.24;
    Json half = full;
    half.erase("bad_heights");
    for (const auto& inputs : {full, half}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
    QCOMPARE(evaluated(half).missing, std::vector<std::string>{"bad_heights"});
  }

  // By hand: middle 5 + 0.5·15 = 12.5; u = 2·0.5/√12 = 0.288675; 95 %: 1.959964·u below, less 10 %.
  void gradedPiece() {
    const auto result = evaluated(graded());
    VERIFY_NEAR(valueOf(result, "flow_limit"), 12.5, 1e-12);
    VERIFY_NEAR(*result.quantity("flow_limit")->u, 1 / std::sqrt(12.0), 1e-12);
    VERIFY_NEAR(valueOf(result, "flow_safe"), 0.9 * (12.5 - 1.959964 / std::sqrt(12.0)), 1e-6);
    QVERIFY(!result.find("hinge_flow"));
    QVERIFY(findingOf(result, "single-reading"));
    QVERIFY(chartOf(result, "graded") && !chartOf(result, "graded")->isEmpty());
  }

  // By hand: middles 12.5, 13.5, 14.5, s = 1, u² = 1/12 + 1/3; ν = (5/12)²/((1/3)²/2) = 3.125.
  void gradedRepeats() {
    Json inputs = graded();
    inputs["bad_heights"] = {{{"last_good_mm", 14}, {"bad_height_mm", 16}},
                             {{"last_good_mm", 16}, {"bad_height_mm", 18}},
                             {{"last_good_mm", 18}, {"bad_height_mm", 20}}};
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "flow_limit"), 13.5, 1e-12);
    VERIFY_NEAR(*result.quantity("flow_limit")->u, std::sqrt(5.0 / 12), 1e-12);
    VERIFY_NEAR(result.quantity("flow_limit")->dof, 3.125, 1e-9);
  }

  // By hand: 20 stairs of 2 mm and 1 mm³/s, with 5.5 on the first. 16.3 mm is on stair 8 with 13.5; the
  // stair below has 12.5: middle 13, u = 1/√12. The last good height, 13.1 mm on stair 6 with 11.5:
  // middle 12.5, u = 2/√12.
  void everyHeightOfAStairHasItsMiddle() {
    Json inputs = graded();
    inputs["graded"]["stairs"] = 20;
    inputs["bad_heights"] = {{{"bad_height_mm", 16.3}}};
    auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "flow_limit"), 13, 1e-12);
    VERIFY_NEAR(*result.quantity("flow_limit")->u, 1 / std::sqrt(12.0), 1e-12);
    inputs["bad_heights"][0]["last_good_mm"] = 13.1;
    result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "flow_limit"), 12.5, 1e-12);
    VERIFY_NEAR(*result.quantity("flow_limit")->u, 2 / std::sqrt(12.0), 1e-12);
    const Series& flow = chartOf(result, "graded")->series.at(0);
    QCOMPARE(flow.x.size(), std::size_t(40));
    VERIFY_NEAR(flow.y.at(0), 5.5, 1e-12);
    VERIFY_NEAR(flow.y.at(39), 24.5, 1e-12);
  }

  // By hand: the second row lies between 16 and 18 mm, 13 and 14: 13.5.
  void onlyABadHeightNeedsTheStairs() {
    Json inputs = graded();
    inputs["bad_heights"] = {{{"bad_height_mm", 16}}};
    auto result = evaluated(inputs);
    QVERIFY(!result.complete);
    QCOMPARE(result.missing, std::vector<std::string>{"graded[1].stairs"});
    QCOMPARE(result.find("flow_limit")->lacks, std::vector<std::string>{"graded[1].stairs"});
    QCOMPARE(result.find("flow_safe")->lacks, std::vector<std::string>{"graded[1].stairs"});
    inputs["bad_heights"].push_back({{"last_good_mm", 16}, {"bad_height_mm", 18}});
    result = evaluated(inputs);
    QVERIFY(result.complete);
    QCOMPARE(result.missing, std::vector<std::string>{"graded[1].stairs"});
    VERIFY_NEAR(valueOf(result, "flow_limit"), 13.5, 1e-12);
  }

  void badHeightsThatCannotBeLeaveTheOthers_data() {
    QTest::addColumn<double>("good");
    QTest::addColumn<double>("bad");
    QTest::addColumn<bool>("stairs");
    QTest::newRow("not above the last good one") << 17.0 << 16.0 << false;
    QTest::newRow("above the piece") << 39.0 << 41.0 << false;
    QTest::newRow("on one stair") << 14.2 << 15.8 << true;
    QTest::newRow("on the first stair") << -1.0 << 1.0 << true;
  }

  // By hand: the other row lies between 14 and 16 mm: 12.5 on the even rise; on stairs 7 and 8: 13.
  void badHeightsThatCannotBeLeaveTheOthers() {
    QFETCH(double, good);
    QFETCH(double, bad);
    QFETCH(bool, stairs);
    Json inputs = graded();
    if (stairs) {
      inputs["graded"]["stairs"] = 20;
    }
    Json wrong{{"bad_height_mm", bad}};
    if (good >= 0) {
      wrong["last_good_mm"] = good;
    }
    inputs["bad_heights"].push_back(wrong);
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("bad_heights[2]"));
    VERIFY_NEAR(valueOf(result, "flow_limit"), stairs ? 13 : 12.5, 1e-12);
    inputs["bad_heights"] = wrong;
    const auto alone = evaluated(inputs);
    QVERIFY(!alone.complete && !alone.quantity("flow_limit"));
    QCOMPARE(alone.find("flow_safe")->why, findingOf(alone, "refused")->text);
  }

  void aPieceMustRise() {
    Json inputs = graded();
    inputs["graded"]["top_value"] = 5;
    QCOMPARE(findingOf(evaluated(inputs), "refused")->at, std::string("graded[1]"));
    inputs["graded"] = {graded()["graded"], graded()["graded"]};
    QCOMPARE(findingOf(evaluated(inputs), "refused")->at, std::string("graded"));
  }
};

FETTLE_TEST(TestMeltGraded)
#include "test_melt_graded.moc"
