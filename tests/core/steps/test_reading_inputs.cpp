#include <QTest>
#include <cmath>
#include <numbers>

#include "core/history/evaluation.h"
#include "core/steps/contract/machine_sheet.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/melt_rate.h"
#include "core/steps/probe_position.h"
#include "core/steps/resonance.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Files that all hold the same text.
class OneFile : public IntakeFiles {
 public:
  explicit OneFile(std::string text)
      : IntakeFiles([text = std::move(text)](const Json&) {
          return tl::expected<std::string, std::string>(text);
        }) {}
};

QString refusalWithFile(const Step& step, const Json& inputs) {
  OneFile files("flow_mm3_s,delivered\n1,1\n2,1\n3,0.9\n4,0.8\n");
  const auto result = step.evaluate(inputs, {}, files);
  return result ? QString() : QString::fromStdString(result.error());
}

}  // namespace

/// How every step reads its inputs. Expected: the rules of core/fields/field_reader.h and
/// core/steps/contract/shared_inputs.h, by inspection.
class TestReadingInputs : public QObject {
  Q_OBJECT

 private slots:
  void yesAndNoAreWordsOfASheet() {
    const auto liner = [](const Json& value) {
      const auto sheet = readMachineSheet({{"name", "a"}, {"hot_end_liner", value}});
      return sheet ? sheet->hotEndLiner : std::nullopt;
    };
    QCOMPARE(liner("yes"), std::optional(true));
    QCOMPARE(liner("no"), std::optional(false));
    QCOMPARE(liner("Yes"), std::optional(true));
    QCOMPARE(liner("NO"), std::optional(false));
    QCOMPARE(liner(true), std::optional(true));
    QVERIFY(!liner("maybe"));
    QVERIFY(!readMachineSheet({{"name", "a"}, {"hot_end_liner", "maybe"}}));
  }

  void whatDoesNotCountMustStillBeANumber() {
    QVERIFY(!readMachineSheet({{"name", "a"}, {"x.drive", "screw"}, {"x.pitch_mm", "two"}}));
    QVERIFY(readMachineSheet({{"name", "a"}, {"x.drive", "screw"}, {"x.pitch_mm", 2}}));
  }

  void aWordIsNoNumberFoundOnTheController() {
    const Json direct{{"offset_x", 1}, {"offset_y", 2}};
    const QString refusal =
        refusalOf(probePositionStep(), {{"direct", direct}, {"as_found", {{"probe_offset_x", "left"}}}});
    QVERIFY2(refusal.contains("probe_offset_x") && refusal.contains("left"), qPrintable(refusal));
    QVERIFY(refusalOf(probePositionStep(), {{"direct", direct}, {"as_found", {{"probe_offset_x", ""}}}})
                .isEmpty());
  }

  // Decrement of three crests ln(0.12/0.07)/2, damping δ/√(4π² + δ²) (any textbook).
  void readingsOneAfterAnotherMayBeAList() {
    const auto damping = [](const Json& amplitudes) {
      const Json ripple{{"axis", "x"},
                        {"speed_mm_s", 100},
                        {"count", 10},
                        {"distance_mm", 20},
                        {"amplitudes_mm", amplitudes}};
      return valueOf(evaluatedOrEnd(resonanceStep(), {{"ripples", {ripple}}}), "x.mode_1_damping");
    };
    const double decrement = std::log(0.12 / 0.07) / 2;
    const double expected = decrement / std::hypot(2 * std::numbers::pi, decrement);
    QCOMPARE(damping("0.12 0.09 0.07"), expected);
    QCOMPARE(damping({0.12, 0.09, 0.07}), expected);
    QCOMPARE(damping("0.12, 0.09, 0.07"), expected);
    QCOMPARE(damping("0.12,0.09,0.07"), expected);
    QCOMPARE(damping("0,12 0,09 0,07"), expected);
    QCOMPARE(damping("0,12; 0,09; 0,07"), expected);
  }

  void aFileReferenceOfAnotherFormIsOneSentence_data() {
    QTest::addColumn<QByteArray>("reference");
    QTest::newRow("file is a number") << QByteArray(R"({"file": 5})");
    QTest::newRow("constants are a list") << QByteArray(R"({"file": "a.csv", "constants": [1]})");
    QTest::newRow("columns are a list") << QByteArray(R"({"file": "a.csv", "columns": [1]})");
    QTest::newRow("units are a word") << QByteArray(R"({"file": "a.csv", "units": "mm"})");
  }

  void aFileReferenceOfAnotherFormIsOneSentence() {
    QFETCH(QByteArray, reference);
    const QString refusal =
        refusalWithFile(meltRateStep(), {{"steps", Json::parse(reference.toStdString())}});
    QVERIFY2(refusal.startsWith("Steps: ") && refusal.endsWith('.'), qPrintable(refusal));
    QVERIFY(refusalWithFile(meltRateStep(), {{"steps", {{"file", "a.csv"}}}}).isEmpty());
  }

  void aValueWithheldHasEveryKey() {
    StepResult result;
    result.withhold(ResultId{"flow_limit", "mm3/s", {}}, "the reason");
    const Json quantity = toJson(result)["quantities"][0];
    for (const char* key : {"value", "u", "U", "dof", "low", "high"}) {
      QVERIFY2(quantity.contains(key) && quantity[key].is_null(), key);
    }
    QVERIFY(quantity["why"] == Json("the reason"));
  }

  void outliersAreNamedTogether() {
    // By hand: two of nine far off; the modified z-score marks both, Grubbs' test alone would hide them.
    const std::vector<double> values{1.0, 1.1, 0.9, 1.0, 1.1, 0.9, 1.0, 9.0, 9.1};
    std::vector<std::size_t> rows{1, 2, 3, 4, 5, 6, 7, 8, 10};
    StepResult result;
    noteOutliers(result, values, rows, 0.1, "width", "mm");
    QCOMPARE(result.findings.size(), std::size_t{1});
    const QString text = QString::fromStdString(result.findings[0].text);
    QVERIFY2(text.startsWith("Rows 8, 10: width 9.0, 9.1 mm lie far"), qPrintable(text));
  }
};

FETTLE_TEST(TestReadingInputs)
#include "test_reading_inputs.moc"
