#include <QTest>
#include <cmath>

#include "core/history/evaluation.h"
#include "core/steps/catalogue.h"
#include "tests/support/axis_moves.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Standard normal quantiles (i − 0.5)/50 in an order without pattern: a scatter without outliers.
double normalScatter(int i) {
  const double share = (i * 27 % 50 + 0.5) / 50;
  double low = -4, high = 4;
  for (int k = 0; k < 60; ++k) {
    const double middle = (low + high) / 2;
    (0.5 * std::erfc(-middle / std::sqrt(2.0)) < share ? low : high) = middle;
  }
  return low;
}

/// Five targets, five runs, both sides: the measurement the standard asks for, s 0.008 mm, read to 0.01.
Json wholeMeasurement() {
  Json rows = Json::array();
  for (int run = 0; run < 5; ++run) {
    for (const int direction : {1, -1}) {
      for (int target = 0; target <= 200; target += 50) {
        const double reading = target + 0.02 * direction + 0.008 * normalScatter(int(rows.size()));
        rows.push_back(moveTo(target, direction, std::round(reading * 100) / 100));
      }
    }
  }
  return {{"moves", rows}};
}

/// The result of moves read from the bytes of a file.
tl::expected<StepResult, std::string> evaluatedFile(const Step& step, const std::string& bytes) {
  IntakeFiles files([&](const Json&) -> tl::expected<std::string, std::string> { return bytes; });
  return step.evaluate({{"moves", {{"file", "moves.csv"}}}}, {}, files);
}

}  // namespace

/// What is said of the runs of an axis and of a travel that does not follow its targets.
class TestAxisTravelRuns : public QObject {
  Q_OBJECT
  const Step& step = *findStep("axis-travel");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  // A normal scatter has no outlier, however few the runs to one target are.
  void ordinaryScatterHasNoOutlier() {
    const auto result = evaluated(wholeMeasurement());
    QCOMPARE(countOf(result, "outlier"), 0);
    QCOMPARE(countOf(result, "fewer-targets-than-standard"), 0);
    QCOMPARE(countOf(result, "fewer-runs-than-standard"), 0);
  }

  void outliersAreToldOnceForAnAxis() {
    Json inputs = wholeMeasurement();
    for (const std::size_t row : {7U, 22U}) {  // other targets, other sides
      inputs["moves"][row]["measured_mm"] = inputs["moves"][row]["measured_mm"].get<double>() + 0.2;
    }
    const auto result = evaluated(inputs);
    QCOMPARE(countOf(result, "outlier"), 1);
    const auto& text = findingOf(result, "outlier")->text;
    QVERIFY2(text.rfind("Rows 8, 23:", 0) == 0 || text.rfind("Rows 23, 8:", 0) == 0, text.c_str());
  }

  // ISO 230-2 takes five targets at least (from memory).
  void fewTargetsAreNoted() {
    const auto result = evaluated(
        {{"moves", {moveTo(0, 1, 0), moveTo(0, -1, 0.01), moveTo(100, 1, 100), moveTo(100, -1, 100.01)}}});
    const Finding* finding = findingOf(result, "fewer-targets-than-standard");
    QVERIFY(finding && finding->text.find(": 2;") != std::string::npos);
    QCOMPARE(finding->severity, Severity::note);
    QCOMPARE(countOf(result, "single-reading"), 1);
    QCOMPARE(countOf(result, "fewer-runs-than-standard"), 1);
  }

  void standstillIsRefused() {
    const auto sentence = refusalOf(
        step,
        {{"moves", {moveTo(0, 1, 10), moveTo(100, 1, 10), moveTo(200, 1, 10.01), moveTo(300, 1, 10)}}});
    QVERIFY2(sentence.contains("do not rise"), qPrintable(sentence));
  }

  // Belt theory 360/1.8·16/(2·20) = 80; found 80.5; travel 80.5/80 = 1.00625: no pair of parts comes near,
  // the sheet says it all.
  void theSheetAloneMayExplain() {
    StepContext context;
    AxisDrive& x = context.sheet.x;
    x = {};
    x.drive = "belt";
    x.pitch = 2;
    x.teeth = 20;
    x.stepAngle = 1.8;
    x.microsteps = 16;
    context.asFound["x.steps_per_mm"].number = 80.5;
    Json rows = Json::array();
    for (const double target : {0.0, 50.0, 100.0, 200.0}) {
      rows.push_back(moveTo(target, 1, 1.00625 * target));
    }
    const auto result = evaluated({{"moves", rows}}, context);
    QCOMPARE(countOf(result, "sheet-explains-travel"), 1);
    QCOMPARE(countOf(result, "travel-ratio-off"), 0);
  }

  // Two equal deviations at two targets: the difference is zero, not certainly so. u by hand with the
  // caliper, r 0.01, e 0.03, one run each: 2·(r²/12) and e²/3.
  void aRangeOfZeroHasItsUncertainty() {
    const auto result = evaluated({{"moves", {moveTo(0, 1, 0), moveTo(100, 1, 100)}}});
    const double u = std::sqrt(2 * 1e-4 / 12 + 9e-4 / 3);
    QCOMPARE(valueOf(result, "x.systematic_deviation"), 0.0);
    VERIFY_NEAR(*result.quantity("x.systematic_deviation")->u, u, 1e-12);
  }

  // Five readings alike by a dial indicator of 0.01: s = 0, and u(s) is that of the resolution,
  // 0.01/√12/√8, by hand.
  void homingsAlikeAreNotExact() {
    Json inputs = wholeMeasurement();
    inputs["homings"] = Json::array();
    for (int i = 0; i < 5; ++i) {
      inputs["homings"].push_back({{"axis", "z"}, {"mm", 0.02}});
    }
    const auto result = evaluated(inputs);
    QCOMPARE(valueOf(result, "z.homing_s"), 0.0);
    VERIFY_NEAR(*result.quantity("z.homing_s")->u, 0.01 / std::sqrt(12.0 * 8), 1e-12);
  }

  // A column of words, as people write them, and one that excludes rows. By hand: 100.05 over 100.
  void movesFromAFile() {
    const auto result = evaluatedFile(step,
                                      "Axis;Target (mm);Direction;Measured (mm);excluded\n"
                                      "X;0;1;0,00;\n"
                                      "X;100;1;100,05;\n"
                                      "X;200;1;250;belt slipped\n");
    QVERIFY2(result, result ? "" : result.error().c_str());
    QVERIFY2(result->complete, result->missing.empty() ? "" : result->missing[0].c_str());
    VERIFY_NEAR(valueOf(*result, "x.travel_ratio"), 1.0005, 1e-12);
  }

  // A word that says no excludes nothing, in whatever case and in a column of numbers too.
  void wordsThatExcludeNothing() {
    for (const char* word : {"no", "No", "FALSE", "0"}) {
      const std::string text = "axis;target_mm;direction;measured_mm;excluded\nx;0;1;0;" +
                               std::string(word) + "\nx;100;1;100,05;" + word + "\n";
      const auto result = evaluatedFile(step, text);
      QVERIFY2(result && result->complete, word);
      QVERIFY2(std::abs(valueOf(*result, "x.travel_ratio") - 1.0005) < 1e-12, word);
    }
  }

  // Words where numbers are needed are told with their place, not passed over.
  void wordsInsteadOfNumbersAreRefused() {
    const auto result =
        evaluatedFile(step, "axis,target_mm,direction,measured_mm\nx,0,up,0\nx,100,up,100\n");
    QVERIFY(!result);
    const auto sentence = QString::fromStdString(result.error());
    QVERIFY2(sentence.contains("direction") && sentence.contains("up"), qPrintable(sentence));
    const auto axis = evaluatedFile(step, "axis,target_mm,direction,measured_mm\nu,0,1,0\nu,100,1,100\n");
    QVERIFY(axis);
    QCOMPARE(findingOf(*axis, "refused")->at, std::string("moves[1].axis"));
  }

  // A header without cells holds nothing that could be wrong.
  void anEmptyColumnIsBlank() {
    const auto result = evaluatedFile(step, "axis,target_mm,direction,measured_mm\nx,0,1,\nx,100,1,\n");
    QVERIFY2(result, result ? "" : result.error().c_str());
    QCOMPARE(result->missing, (std::vector<std::string>{"moves[1].measured_mm", "moves[2].measured_mm"}));
  }
};

FETTLE_TEST(TestAxisTravelRuns)
#include "test_axis_travel_runs.moc"
