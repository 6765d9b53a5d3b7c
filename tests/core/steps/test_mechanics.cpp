#include <QTest>
#include <algorithm>
#include <cmath>

#include "core/steps/catalogue.h"
#include "core/steps/mechanics.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Every check in order.
Json allTicked() {
  Json inputs{{"checks", Json::array()}};
  for (const auto& item : mechanicsItems()) {
    inputs["checks"].push_back({{"item", item.key}, {"ok", true}});
  }
  return inputs;
}

Json withFace(double p, double q, double length) {
  Json inputs = allTicked();
  inputs["diagonals"] = {{{"face", "Front left"}, {"p_mm", p}, {"q_mm", q}, {"length_mm", length}}};
  return inputs;
}

Json withDrag(std::initializer_list<double> forces) {
  Json inputs = allTicked();
  inputs["drag"] = Json::array();
  int place = 0;
  for (const double force : forces) {
    inputs["drag"].push_back(
        {{"axis", "x"}, {"position", "place " + std::to_string(++place)}, {"force_N", force}});
  }
  return inputs;
}

Json& answerTo(Json& inputs, const std::string& item) {
  for (auto& answer : inputs["checks"]) {
    if (answer["item"] == item) {
      return answer;
    }
  }
  qFatal("no such item");
}

}  // namespace

/// Expected values are worked by hand beside each test.
class TestMechanics : public QObject {
  Q_OBJECT
  const Step& step = *findStep("mechanics");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json full = withFace(640, 642, 500);
    full["drag"] = withDrag({3, 3.2, 5, 3, 3})["drag"];
    for (const auto& inputs : {full, allTicked(), withDrag({3}), withDrag({0, 0})}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
  }

  void allInOrderPasses() {
    const auto result = evaluated(allTicked());
    QCOMPARE(result.verdict(), Verdict::pass);
    VERIFY_NEAR(valueOf(result, "checks_done"), static_cast<double>(mechanicsItems().size()), 0);
    VERIFY_NEAR(valueOf(result, "checks_open"), 0, 0);
    QVERIFY(!findingOf(result, "checks-open") && !findingOf(result, "check-failed"));
    QCOMPARE(findingOf(result, "start-drying")->see, std::string("filament-feed"));
  }

  void openChecksAreUndecided() {
    Json inputs = allTicked();
    inputs["checks"].erase(6);
    answerTo(inputs, "wheels").erase("ok");
    const auto result = evaluated(inputs);
    QCOMPARE(result.verdict(), Verdict::undecided);
    VERIFY_NEAR(valueOf(result, "checks_open"), 2, 0);
    const QString said = QString::fromStdString(findingOf(result, "checks-open")->text);
    QVERIFY2(said.contains("Rails") && said.contains("Wheels"), qPrintable(said));
  }

  void aFailedCheckFails() {
    Json inputs = allTicked();
    answerTo(inputs, "rails") = {{"item", "rails"}, {"ok", false}, {"remark", "Rust at the left end."}};
    auto result = evaluated(inputs);
    QCOMPARE(result.verdict(), Verdict::fail);
    QCOMPARE(findingOf(result, "check-failed")->severity, Severity::caution);
    QVERIFY(findingOf(result, "check-failed")->text.find("Rust") != std::string::npos);
    inputs = allTicked();
    answerTo(inputs, "crimps")["ok"] = false;
    result = evaluated(inputs);
    QCOMPARE(findingOf(result, "check-failed")->severity, Severity::fault);
    QCOMPARE(findingOf(result, "check-failed")->see, std::string("safety"));
  }

  // 1 mm over an edge of 500 mm. Rule: u = 0.5·√(2/12) = 0.2041 mm without limit of error, guard band
  // 0.336.
  void diagonalsAreJudgedFaceByFace() {
    const char* id = "front_left.diagonal_difference";
    const auto square = evaluated(withFace(640.5, 640, 500));
    VERIFY_NEAR(valueOf(square, id), 0.5, 1e-12);
    VERIFY_NEAR(*square.quantity(id)->u, 0.5 * std::sqrt(2.0 / 12), 1e-12);
    QCOMPARE(verdictOf(square, id), Verdict::pass);
    QVERIFY(findingOf(square, "single-reading") && !findingOf(square, "out-of-square"));
    QCOMPARE(verdictOf(evaluated(withFace(640, 641, 500)), id), Verdict::undecided);
    const auto askew = evaluated(withFace(640, 641.5, 500));
    VERIFY_NEAR(valueOf(askew, id), -1.5, 1e-12);
    QCOMPARE(verdictOf(askew, id), Verdict::fail);
    QCOMPARE(findingOf(askew, "out-of-square")->at, std::string("diagonals[1]"));
    QCOMPARE(verdictOf(evaluated(withFace(1280, 1281.5, 1000)), id), Verdict::pass);  // 2 mm allowed
    StepContext strict;
    strict.tolerances[std::string("mechanics.") + id] = {-0.1, 0.1};
    QCOMPARE(verdictOf(evaluated(withFace(640.5, 640, 500), strict), id), Verdict::fail);
    QVERIFY(findingOf(evaluated(withFace(200, 200, 150)), "instrument-too-coarse"));
  }

  // Differences 0.5, 1.0, 1.5: s² = 0.25; u² = 0.25/3 + 2·0.25/(12·3). As drawn, per 500 of 400 mm: × 1.25.
  void repeatedDiagonalsAreAveraged() {
    Json inputs = withFace(520.5, 520, 400);
    for (const double p : {521.0, 521.5}) {
      inputs["diagonals"].push_back(
          {{"face", "front left"}, {"p_mm", p}, {"q_mm", 520}, {"length_mm", 400}});
    }
    const auto result = evaluated(inputs);
    const Quantity& difference = *result.quantity("front_left.diagonal_difference");
    VERIFY_NEAR(difference.value, 1, 1e-12);
    VERIFY_NEAR(*difference.u, std::sqrt(0.25 / 3 + 0.5 / 36), 1e-12);
    const auto& series = chartOf(result, "diagonals")->series;
    QCOMPARE(series.size(), std::size_t(3));  // readings, mean, its U
    VERIFY_NEAR(series[0].y.at(2), 1.5 * 1.25, 1e-9);
    VERIFY_NEAR(series[1].y.at(0), 1.25, 1e-9);
    VERIFY_NEAR(series[2].y.back(), 1.25 + 1.25 * *expandedUncertainty(difference), 1e-9);
  }

  // Forces 3.0, 3.2, 3.1, 3.0, 3.7: mean 3.2, spread 0.7/3.2 = 0.21875. Scale r 0.1, e 0.2:
  // u_mean² = 0.01/60 + 0.04/3; u² = 0.01/12·2/3.2² + (0.21875·u_mean/3.2)².
  void dragAndItsSpread() {
    const auto result = evaluated(withDrag({3.0, 3.2, 3.1, 3.0, 3.7}));
    VERIFY_NEAR(valueOf(result, "x.drag_N"), 3.2, 1e-12);
    const double mean = std::sqrt(0.01 / 60 + 0.04 / 3);
    VERIFY_NEAR(*result.quantity("x.drag_N")->u, mean, 1e-12);
    const Quantity& spread = *result.quantity("x.drag_spread");
    VERIFY_NEAR(spread.value, 0.21875, 1e-12);
    VERIFY_NEAR(*spread.u, std::hypot(0.1 * std::sqrt(2.0 / 12) / 3.2, 0.21875 * mean / 3.2), 1e-12);
    QCOMPARE(verdictOf(result, "x.drag_spread"), Verdict::pass);
    QVERIFY(!findingOf(result, "binding") && !findingOf(result, "few-places"));
  }

  void bindingIsSaidWithItsPlace() {
    const auto result = evaluated(withDrag({3.0, 3.2, 3.1, 3.0, 5.2}));  // 2.2/3.5 = 0.63
    QCOMPARE(verdictOf(result, "x.drag_spread"), Verdict::fail);
    QCOMPARE(findingOf(result, "binding")->at, std::string("drag[5]"));
    StepContext lenient;
    lenient.tolerances["mechanics.x.drag_spread"] = {std::nullopt, 0.9};
    QVERIFY(!findingOf(evaluated(withDrag({3.0, 3.2, 3.1, 3.0, 5.2}), lenient), "binding"));
  }

  // Two readings at one place are one place with their mean: 3.0 and 4.0 to 3.5.
  void readingsAtOnePlaceAreAveraged() {
    Json inputs = withDrag({3.0, 3.5});
    inputs["drag"].push_back({{"axis", "x"}, {"position", "place 1"}, {"force_N", 4.0}});
    const auto result = evaluated(inputs);
    VERIFY_NEAR(valueOf(result, "x.drag_spread"), 0, 1e-12);
    QVERIFY(findingOf(result, "few-places"));
  }

  void noSpreadOfOnePlaceOrOfNoForce() {
    const auto one = evaluated(withDrag({3}));
    QVERIFY(one.find("x.drag_spread") && !one.quantity("x.drag_spread"));
    const auto none = evaluated(withDrag({0, 0, 0, 0, 0}));
    QVERIFY(none.find("x.drag_spread") && !none.quantity("x.drag_spread"));
  }

  // Each part stands for itself; what nobody answered is open, not passed.
  void readingsCountWithoutTheChecklist() {
    Json inputs = withFace(640.5, 640, 500);
    inputs.erase("checks");
    const auto result = evaluated(inputs);
    QVERIFY(result.complete);
    VERIFY_NEAR(valueOf(result, "front_left.diagonal_difference"), 0.5, 1e-12);
    QCOMPARE(verdictOf(result, "checks_failed"), Verdict::undecided);
    VERIFY_NEAR(valueOf(result, "checks_open"), static_cast<double>(mechanicsItems().size()), 0);
  }

  void whatWasReadOnceIsSaidOnce() {
    Json inputs = withFace(640.5, 640, 500);
    for (const char* face : {"top", "bottom", "back"}) {
      inputs["diagonals"].push_back({{"face", face}, {"p_mm", 640}, {"q_mm", 640}, {"length_mm", 500}});
    }
    const auto result = evaluated(inputs);
    QCOMPARE(std::count_if(result.findings.begin(), result.findings.end(),
                           [](const Finding& finding) { return finding.code == "single-reading"; }),
             std::ptrdiff_t(1));
    const std::string& said = findingOf(result, "single-reading")->text;
    QVERIFY(said.find("Front left, top, bottom, back") != std::string::npos);
    QVERIFY(findingOf(evaluated(withDrag({3})), "single-reading"));
    inputs["drag"] = withDrag({3})["drag"];
    QCOMPARE(countOf(evaluated(inputs), "single-reading"), 2);
    QVERIFY(!findingOf(evaluated(withDrag({3, 3, 3, 3, 3})), "single-reading"));
  }

  // Differences 0.5, 0.5, 0.6, 0.5, 5: the last has a modified z-score of 4.5/(0.5·√2/√12) = 22.
  void anOutlierAmongRepeatsIsMarked() {
    Json inputs = withFace(640.5, 640, 500);
    for (const double p : {640.5, 640.6, 640.5, 645.0}) {
      inputs["diagonals"].push_back(
          {{"face", "front left"}, {"p_mm", p}, {"q_mm", 640}, {"length_mm", 500}});
    }
    const auto result = evaluated(inputs);
    const auto* outlier = findingOf(result, "outlier");
    QVERIFY(outlier && outlier->text.find("Row 5") != std::string::npos);
  }

  // Differences 0.6 and 1.4 scatter so much that the rule in hand would do if it were read more often;
  // ±0.26 mm on 130 mm is too little for a rule (2·1.645·0.204 mm), a caliper would do.
  void onlyAFinerInstrumentIsNamed() {
    Json scattered = withFace(700.6, 700, 500);
    scattered["diagonals"].push_back(
        {{"face", "front left"}, {"p_mm", 701.4}, {"q_mm", 700}, {"length_mm", 500}});
    const std::string more = findingOf(evaluated(scattered), "instrument-too-coarse")->text;
    QVERIFY2(more.find("More readings would do.") != std::string::npos, more.c_str());
    const std::string finer =
        findingOf(evaluated(withFace(300, 300.2, 130)), "instrument-too-coarse")->text;
    QVERIFY2(finer.find("tolerance of 0.52 mm") != std::string::npos, finer.c_str());
    QVERIFY2(finer.find("A caliper (limit of error 0.03 mm) would do.") != std::string::npos,
             finer.c_str());
  }

  void aToleranceMayBeSetForEveryAxis() {
    StepContext lenient;
    lenient.tolerances["mechanics.<axis>.drag_spread"] = {std::nullopt, 0.9};
    const auto result = evaluated(withDrag({3.0, 3.2, 3.1, 3.0, 5.2}), lenient);
    QVERIFY(!findingOf(result, "binding"));
    QCOMPARE(verdictOf(result, "x.drag_spread"), Verdict::pass);
  }

  void answersMayBeWords() {
    Json inputs = allTicked();
    answerTo(inputs, "rails")["ok"] = "no";
    answerTo(inputs, "wheels")["ok"] = "yes";
    VERIFY_NEAR(valueOf(evaluated(inputs), "checks_failed"), 1, 0);
    answerTo(inputs, "rails")["ok"] = "perhaps";
    QVERIFY(refusalOf(step, inputs).contains("neither yes nor no"));
  }

  void anExclusionNeedsItsReason() {
    Json inputs = withFace(640, 640, 500);
    inputs["diagonals"][0]["excluded"] = true;
    QVERIFY(refusalOf(step, inputs).contains("row 1, excluded: true"));
    inputs["diagonals"][0]["excluded"] = "";
    QVERIFY(evaluated(inputs).quantity("front_left.diagonal_difference"));
  }

  void excludedRowsDoNotCount() {
    Json inputs = withDrag({3.0, 3.2, 3.1, 3.0, 3.7, 9});
    inputs["drag"][5]["excluded"] = "pulled at a slant";
    VERIFY_NEAR(valueOf(evaluated(inputs), "x.drag_spread"), 0.21875, 1e-12);
  }

  void incompleteAndRefused() {
    const auto empty = evaluated(Json::object());
    QVERIFY(!empty.complete);
    QCOMPARE(empty.missing, std::vector<std::string>{"checks"});
    QVERIFY(refusalOf(step, withDrag({-1})).contains("Force"));
    Json inputs = allTicked();
    inputs["checks"][0]["item"] = "no such check";
    const auto unknown = evaluated(inputs);
    QCOMPARE(findingOf(unknown, "refused")->at, std::string("checks"));
    VERIFY_NEAR(valueOf(unknown, "checks_open"), 1, 0);  // the answer counts for no other item
    VERIFY_NEAR(valueOf(unknown, "checks_done"), static_cast<double>(mechanicsItems().size() - 1), 0);
  }

  // What is half typed or refused leaves what the other entries give.
  void aHalfTypedRowHidesNothing() {
    Json inputs = withFace(640.5, 640, 500);
    inputs["drag"] = withDrag({3.0, 3.2, 3.1, 3.0, 3.7})["drag"];
    inputs["diagonals"].push_back({{"face", "back"}, {"p_mm", 640}, {"length_mm", 500}});
    inputs["drag"].push_back({{"axis", "y"}});
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing,
             (std::vector<std::string>{"diagonals[2].q_mm", "drag[6].position", "drag[6].force_N"}));
    QVERIFY(result.complete);
    VERIFY_NEAR(valueOf(result, "front_left.diagonal_difference"), 0.5, 1e-12);
    VERIFY_NEAR(valueOf(result, "x.drag_spread"), 0.21875, 1e-12);
    QVERIFY(!result.find("y.drag_N"));
  }

  void aBadCellLeavesTheOtherRows() {
    Json inputs = withDrag({3.0, 3.2, 3.1, 3.0, 3.7, -4});
    inputs["diagonals"] = withFace(640.5, 640, 500)["diagonals"];
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("drag[6].force_N"));
    VERIFY_NEAR(valueOf(result, "x.drag_spread"), 0.21875, 1e-12);
    VERIFY_NEAR(valueOf(result, "front_left.diagonal_difference"), 0.5, 1e-12);
  }

  // A diagonal shorter than the edge; then a face with two edges. Only the face itself is withheld.
  void aContradictoryFaceWithholdsItself() {
    Json inputs = withFace(640.5, 640, 500);
    inputs["diagonals"].push_back({{"face", "back"}, {"p_mm", 640}, {"q_mm", 480}, {"length_mm", 500}});
    auto result = evaluated(inputs);
    QVERIFY(!result.complete);
    QCOMPARE(findingOf(result, "refused")->at, std::string("diagonals[2]"));
    QVERIFY(result.find("back.diagonal_difference") && !result.quantity("back.diagonal_difference"));
    VERIFY_NEAR(valueOf(result, "front_left.diagonal_difference"), 0.5, 1e-12);
    inputs["diagonals"][1] = {{"face", "front LEFT"}, {"p_mm", 640}, {"q_mm", 640}, {"length_mm", 400}};
    result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("diagonals[2]"));
    QVERIFY(!result.quantity("front_left.diagonal_difference"));
    VERIFY_NEAR(valueOf(result, "checks_failed"), 0, 0);
  }

  void aTwofoldAnswerWithholdsTheChecks() {
    Json inputs = withFace(640.5, 640, 500);
    inputs["checks"].push_back({{"item", "rails"}, {"ok", false}});
    const auto result = evaluated(inputs);
    QCOMPARE(findingOf(result, "refused")->at, std::string("checks"));
    QVERIFY(result.find("checks_failed") && !result.quantity("checks_failed"));
    VERIFY_NEAR(valueOf(result, "front_left.diagonal_difference"), 0.5, 1e-12);
  }

  // Five places of each axis (common practice), with nothing but the force to be typed.
  void thePlanAsksForForcesOnly() {
    const Json rows = step.plans.front().rows(Json::object(), {});
    QCOMPARE(rows.size(), std::size_t(15));
    const auto result = evaluated({{"checks", allTicked()["checks"]}, {"drag", rows}});
    QCOMPARE(result.missing.size(), std::size_t(15));
    QCOMPARE(result.missing.front(), std::string("drag[1].force_N"));
  }
};

FETTLE_TEST(TestMechanics)
#include "test_mechanics.moc"
