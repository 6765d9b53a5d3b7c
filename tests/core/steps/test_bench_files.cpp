#include <QTest>

#include "core/steps/catalogue.h"
#include "tests/support/files_in.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Files as a bench brings them through the whole path: file, intake, step. Expected values: the numbers
/// with which tests/data/make_data.py makes them.
class TestBenchFiles : public QObject {
  Q_OBJECT

  static tl::expected<StepResult, std::string> evaluate(const char* step, const Json& inputs) {
    IntakeFiles files = filesIn(dataFile({}));
    StepContext context;
    context.subject = "hot_end";
    context.sheet.hotEndMax = 300;
    return findStep(step)->evaluate(inputs, context, files);
  }

  static Json sweep(const char* axis, const char* file) {
    return {{"captures",
             {{{"axis", axis},
               {"position", "centre"},
               {"sweep_from_hz", 5},
               {"sweep_to_hz", 75},
               {"sweep_s", 16},
               {"capture", {{"file", file}}}}}}};
  }

 private slots:
  // Temperatures are rounded to 0.01 °C, which moves none of the three by 0.02.
  void heaterStep() {
    const auto result = evaluate(
        "heater-control", {{"mode", "step"}, {"target_C", 210}, {"log", {{"file", "hot-end-step.csv"}}}});
    QVERIFY2(result, result ? "" : result.error().c_str());
    VERIFY_NEAR(valueOf(*result, "hot_end.gain_C"), 480, 0.02);
    VERIFY_NEAR(valueOf(*result, "hot_end.tau_s"), 120, 0.02);
    VERIFY_NEAR(valueOf(*result, "hot_end.theta_s"), 8, 0.02);
  }

  void heaterHold() {
    const auto result =
        evaluate("heater-control", {{"mode", "hold"}, {"log", {{"file", "hot-end-hold.csv"}}}});
    QVERIFY2(result, result ? "" : result.error().c_str());
    VERIFY_NEAR(valueOf(*result, "hot_end.overshoot_C"), 1.2, 0.005);
  }

  void sweeps_data() {
    QTest::addColumn<QString>("axis");
    QTest::addColumn<QString>("file");
    QTest::addColumn<double>("hertz");
    QTest::addColumn<double>("damping");
    // The estimates scatter by 0.01 Hz and 0.0003; that the sweep does not stand still moves them by up to
    // 0.03 Hz and 0.0008. With the gap fewer segments are left: 0.2 Hz and 0.005.
    QTest::newRow("seconds and mm/s²") << "x"
                                       << "sweep-x.csv" << 0.06 << 0.0015;
    QTest::newRow("milliseconds, g, decimal commas") << "y"
                                                     << "sweep-y-decimal-comma.csv" << 0.06 << 0.0015;
    QTest::newRow("microseconds, mg, a gap") << "x"
                                             << "sweep-x-gap.txt" << 0.4 << 0.01;
  }
  void sweeps() {
    QFETCH(QString, axis);
    QFETCH(QString, file);
    QFETCH(double, hertz);
    QFETCH(double, damping);
    const auto result = evaluate("resonance", sweep(qPrintable(axis), qPrintable(file)));
    QVERIFY2(result, result ? "" : result.error().c_str());
    const std::string place = axis.toStdString() + ".centre.";
    VERIFY_NEAR(valueOf(*result, place + "mode_1_hz"), 31, hertz);
    VERIFY_NEAR(valueOf(*result, place + "mode_2_hz"), 58, hertz);
    VERIFY_NEAR(valueOf(*result, place + "mode_1_damping"), 0.06, damping);
    VERIFY_NEAR(valueOf(*result, place + "mode_2_damping"), 0.05, damping);
    QVERIFY(!result->find(place + "mode_3_hz"));
    QCOMPARE(countOf(*result, "gap"), file.contains("gap") ? 1 : 0);
    QCOMPARE(result->findings.size(), std::size_t(file.contains("gap") ? 1 : 0));
  }

  void faulty_data() {
    QTest::addColumn<QString>("file");
    for (const char* name : {"backwards", "binary", "empty", "not-a-number", "ragged", "words"}) {
      QTest::newRow(name) << QString("faulty-%1.csv").arg(name);
    }
  }
  void faulty() {
    QFETCH(QString, file);
    const auto result = evaluate("resonance", sweep("x", qPrintable(file)));
    QVERIFY(!result);
    QVERIFY2(result.error().starts_with("Captures, row 1, Capture: "), result.error().c_str());
    QVERIFY(result.error().ends_with('.'));
  }
};

FETTLE_TEST(TestBenchFiles)
#include "test_bench_files.moc"
