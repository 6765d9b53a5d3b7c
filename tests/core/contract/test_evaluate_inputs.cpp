#include <QTest>
#include <limits>

#include "core/steps/contract/step.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

struct WidthInputs {
  struct Row : TableRow {
    std::optional<double> width;
    void describe(FieldList& columns) {
      columns.number("width_mm", width, "Width", "mm").bounds(0, 10).required();
    }
  };
  std::vector<Row> walls;
  std::optional<double> height;
  double expected = 0.45;
  void describe(FieldList& fields) {
    fields.table("walls", walls, "Walls").required();
    fields.number("height_mm", height, "Height", "mm").bounds(0, 1);
    fields.number("expected_mm", expected, "Expected", "mm").bounds(0, 10);
  }
};

struct WidthResults {
  ResultKey<> mean, excess, area, greatest;
  SettingKey<> factor;
  void describe(ResultList& results) {
    results.quantity("mean", mean, "Mean", "mm").headline().within(0.4, 0.5);
    results.quantity("excess", excess, "Excess", "mm");
    results.quantity("area", area, "Area", "mm2");
    results.quantity("greatest", greatest, "Greatest", "mm");
    results.setting("flow_factor", factor, "Flow factor", "1");
  }
};

StepResult evaluate(const WidthInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<WidthResults>();
  StepResult result;
  const auto walls = included(inputs.walls);
  double sum = 0, greatest = 0;
  for (const auto& wall : walls) {
    sum += *wall.width;
    greatest = std::max(greatest, *wall.width);
  }
  if (walls.empty()) {
    return result;
  }
  const double mean = sum / static_cast<double>(walls.size());
  result.give(key.mean, mean);
  result.give(key.excess, mean - inputs.expected);
  if (inputs.height) {
    result.give(key.area, mean * *inputs.height);
  } else {
    result.wantFor(key.area, {"height_mm"});
  }
  result.attempt({key.greatest}, [&] {
    if (greatest > 5) {
      throw Refusal{"Walls: 5 mm is the most.", "walls"};
    }
    result.give(key.greatest, greatest);
  });
  const auto before = context.inForceNumber(key.factor);
  if (before) {
    result.propose(key.factor, plainQuantity(*before * inputs.expected / mean, "1"));
  }
  return result;
}

const Step& widthStep() {
  static const Step step = [] {
    Step made;
    made.key = "width";
    Chart chart;
    chart.whenEmpty = "Enter widths.";
    made.emptyCharts = {chart};
    return describedStep<WidthResults, WidthInputs>(std::move(made), &evaluate);
  }();
  return step;
}

Json walls(const std::vector<Json>& widths) {
  Json rows = Json::array();
  for (const auto& width : widths) {
    rows.push_back({{"width_mm", width}});
  }
  return rows;
}

}  // namespace

/// What every evaluation owes whoever asks. Expected: arithmetic by hand on two or three widths.
class TestEvaluateInputs : public QObject {
  Q_OBJECT

 private slots:
  void nothingEnteredSaysWhatToEnter() {
    const StepResult result = evaluatedOrEnd(widthStep(), Json::object());
    QVERIFY(!result.complete);
    QCOMPARE(result.missing, std::vector<std::string>{"walls"});
    QCOMPARE(result.next[0].field, std::string("walls"));
    QCOMPARE(result.find("mean")->lacks, std::vector<std::string>{"walls"});
    QCOMPARE(result.charts.size(), std::size_t{1});
  }

  void whatIsThereIsGiven() {
    const StepResult result = evaluatedOrEnd(widthStep(), {{"walls", walls({0.44, 0.46, "thin"})}});
    QVERIFY(result.complete);
    QCOMPARE(valueOf(result, "mean"), 0.45);
    QCOMPARE(findingOf(result, "refused")->at, std::string("walls[3].width_mm"));
    QCOMPARE(findingOf(result, "refused")->severity, Severity::fault);
    QCOMPARE(result.find("area")->why, std::string("needs Height"));
    QCOMPARE(result.missing, std::vector<std::string>{"height_mm"});
  }

  void aRefusalWithholdsItsOwnResults() {
    const StepResult result = evaluatedOrEnd(widthStep(), {{"walls", walls({0.4, 8})}, {"height_mm", 0.2}});
    QVERIFY(!result.quantity("greatest"));
    QCOMPARE(valueOf(result, "mean"), 4.2);
    QVERIFY(!result.complete);  // a part was refused
    QCOMPARE(result.find("greatest")->lacks, std::vector<std::string>{"walls"});
  }

  void aRefusedNumberWithholdsWhatNeedsIt() {
    const StepResult result =
        evaluatedOrEnd(widthStep(), {{"walls", walls({0.44, 0.46})}, {"expected_mm", "wide"}});
    QVERIFY(!result.quantity("excess") && !result.find("excess")->why.empty());
    QCOMPARE(valueOf(result, "mean"), 0.45);
  }

  void judgementsCarryLimitAndGuard() {
    const StepResult result = evaluatedOrEnd(widthStep(), {{"walls", walls({0.44, 0.46})}});
    const Judged* judged = result.judgement("mean");
    QVERIFY(judged && judged->verdict == Verdict::pass);
    QVERIFY(judged->limit == (Tolerance{0.4, 0.5}));
    const Json json = toJson(result)["judgements"][0];
    QCOMPARE(json["limit"].dump(), std::string("[0.4,0.5]"));
    QVERIFY(json.contains("guard") && json["verdict"] == "pass");
  }

  void correctionsStartFromTheValueInForce() {
    StepContext context;
    context.asFound["flow_factor"] = {1.0, {}};
    Json inputs{{"walls", walls({0.9})}};
    QCOMPARE(*evaluatedOrEnd(widthStep(), inputs, context).settings[0].proposed.number, 0.5);
    context.inForce["flow_factor"] = {0.8, {}};
    const StepResult result = evaluatedOrEnd(widthStep(), inputs, context);
    QCOMPARE(*result.settings[0].proposed.number, 0.4);
    QCOMPARE(*result.settings[0].asFound.number, 1.0);
    QCOMPARE(*result.settings[0].inForce.number, 0.8);
    inputs["in_force"] = {{"flow_factor", 0.6}};
    QCOMPARE(*evaluatedOrEnd(widthStep(), inputs, context).settings[0].proposed.number, 0.3);
  }

  void aWordInThePlaceOfANumberIsRefusedByName() {
    StepContext context;
    context.asFound["flow_factor"] = {std::nullopt, "all"};
    const auto result = evaluateJson(widthStep(), Json::object(), context);
    QVERIFY(!result && result.error().find("flow_factor") != std::string::npos);
    QVERIFY_EXCEPTION_THROWN((void)context.asFoundNumber("flow_factor"), Refusal);
  }

  void onlyWhatCannotBeReadIsAnError() {
    QVERIFY(!evaluateJson(widthStep(), Json::array()));
    QVERIFY(!evaluateJson(widthStep(), {{"wals", walls({1})}}));
    QVERIFY(!evaluateJson(widthStep(), {{"walls", {{"file", "no.csv"}}}}));
    QVERIFY(evaluateJson(widthStep(), {{"walls", "none"}}));
  }

  void aResultComesBackWhole() {
    StepContext context;
    context.asFound["flow_factor"] = {1.0, {}};
    const StepResult result = evaluatedOrEnd(widthStep(), {{"walls", walls({0.44, "thin"})}}, context);
    const Json json = toJson(result);
    QVERIFY(toJson(resultFromJson(json)) == json);
  }
};

FETTLE_TEST(TestEvaluateInputs)
#include "test_evaluate_inputs.moc"
