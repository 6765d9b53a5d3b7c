#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "core/steps/mechanics.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
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
    QCOMPARE(missingSections(step.key), QString());
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
    QCOMPARE(square.verdicts.at(id), Verdict::pass);
    QVERIFY(findingOf(square, "single-reading") && !findingOf(square, "out-of-square"));
    QCOMPARE(evaluated(withFace(640, 641, 500)).verdicts.at(id), Verdict::undecided);
    const auto askew = evaluated(withFace(640, 641.5, 500));
    VERIFY_NEAR(valueOf(askew, id), -1.5, 1e-12);
    QCOMPARE(askew.verdicts.at(id), Verdict::fail);
    QVERIFY(findingOf(askew, "out-of-square"));
    QCOMPARE(evaluated(withFace(1280, 1281.5, 1000)).verdicts.at(id), Verdict::pass);  // 2 mm allowed
    StepContext strict;
    strict.tolerances[std::string("mechanics.") + id] = {-0.1, 0.1};
    QCOMPARE(evaluated(withFace(640.5, 640, 500), strict).verdicts.at(id), Verdict::fail);
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
    QCOMPARE(series.size(), std::size_t(1));
    VERIFY_NEAR(series[0].y.at(2), 1.5 * 1.25, 1e-9);
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
    QCOMPARE(result.verdicts.at("x.drag_spread"), Verdict::pass);
    QVERIFY(!findingOf(result, "binding") && !findingOf(result, "few-places"));
  }

  void bindingIsSaidWithItsPlace() {
    const auto result = evaluated(withDrag({3.0, 3.2, 3.1, 3.0, 5.2}));  // 2.2/3.5 = 0.63
    QCOMPARE(result.verdicts.at("x.drag_spread"), Verdict::fail);
    QVERIFY(findingOf(result, "binding")->text.find("place 5") != std::string::npos);
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

  void excludedRowsDoNotCount() {
    Json inputs = withDrag({3.0, 3.2, 3.1, 3.0, 3.7, 9});
    inputs["drag"][5]["excluded"] = "pulled at a slant";
    VERIFY_NEAR(valueOf(evaluated(inputs), "x.drag_spread"), 0.21875, 1e-12);
  }

  void incompleteAndRefused() {
    Json inputs = withFace(640, 640, 500);
    inputs.erase("checks");
    const auto empty = evaluated(inputs);
    QCOMPARE(empty.missing, std::vector<std::string>{"checks"});
    QVERIFY(empty.values.empty() && !chartOf(empty, "diagonals")->isEmpty());
    inputs = withFace(640, 640, 500);
    inputs["diagonals"][0].erase("q_mm");
    QCOMPARE(evaluated(inputs).missing, std::vector<std::string>{"diagonals[1].q_mm"});
    QVERIFY(refusalOf(step, withFace(640, 480, 500)).contains("not longer than the edge"));
    inputs = withFace(640, 640, 500);
    inputs["diagonals"].push_back(
        {{"face", "front LEFT"}, {"p_mm", 640}, {"q_mm", 640}, {"length_mm", 400}});
    QVERIFY(refusalOf(step, inputs).contains("500 mm before"));
    inputs = allTicked();
    inputs["checks"].push_back({{"item", "rails"}, {"ok", false}});
    QVERIFY(refusalOf(step, inputs).contains("both yes and no"));
    inputs = allTicked();
    inputs["checks"][0]["item"] = "no such check";
    QVERIFY(!refusalOf(step, inputs).isEmpty());
    QVERIFY(refusalOf(step, withDrag({-1})).contains("Force"));
  }
};

FETTLE_TEST(TestMechanics)
#include "test_mechanics.moc"
