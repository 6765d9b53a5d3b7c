#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/described.h"
#include "tests/support/files_in.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Captures of an independent simulation, kept beside the project, through the whole path: file, intake,
/// step. Their true modes stand in the README beside them; frequencies are to be met within 0.7 Hz and
/// dampings within 0.015, those of the capture with the gap within 0.006.
class TestResonanceShared : public QObject {
  Q_OBJECT

  tl::expected<StepResult, std::string> evaluate(Json row) {
    IntakeFiles files = filesIn(outsideFile("inputs"));
    return findStep("resonance")->evaluate({{"captures", {std::move(row)}}}, {}, files);
  }

  static Json sweep(const char* axis, const char* file, double seconds) {
    return {{"axis", axis},       {"position", "centre"}, {"sweep_from_hz", 5},
            {"sweep_to_hz", 120}, {"sweep_s", seconds},   {"capture", {{"file", file}}}};
  }

  static void compareMode(const StepResult& result, const std::string& id, double frequency, double damping,
                          double dampingTolerance) {
    const Quantity* hz = result.quantity(id + "_hz");
    const Quantity* zeta = result.quantity(id + "_damping");
    QVERIFY2(hz && zeta, id.c_str());
    qInfo("%s: %.3f ± %.3f Hz (true %.1f), damping %.4f ± %.4f (true %.3f)", id.c_str(), hz->value, *hz->u,
          frequency, zeta->value, *zeta->u, damping);
    VERIFY_NEAR(hz->value, frequency, 0.7);
    VERIFY_NEAR(zeta->value, damping, dampingTolerance);
  }

 private slots:
  void init() { SKIP_WITHOUT_OUTSIDE_FILE(outsideFile("inputs/sweep-x-centre.csv")); }

  void sweepOfX() {
    const auto result = evaluate(sweep("x", "sweep-x-centre.csv", 30));
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    compareMode(*result, "x.centre.mode_1", 44.6, 0.055, 0.015);
    compareMode(*result, "x.centre.mode_2", 78, 0.05, 0.015);
    QVERIFY(!result->find("x.centre.mode_3_hz"));
    QCOMPARE(result->settings.size(), std::size_t(3));
    QCOMPARE(undescribed(*findStep("resonance"), *result), QString());
    QCOMPARE(unsoundCharts(*result), QString());
    QVERIFY(result->findings.empty());
  }

  void sweepOfY() {
    Json row = sweep("y", "sweep-y-centre-decimal-comma.csv", 30);
    row["capture"]["columns"] = {{"time_s", 1}, {"ax", 2}, {"ay", 3}, {"az", 4}};
    const auto result = evaluate(row);
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    compareMode(*result, "y.centre.mode_1", 36.2, 0.07, 0.015);
    QVERIFY(!result->find("y.centre.mode_2_hz"));
  }

  void sweepWithGap() {
    Json row = sweep("x", "sweep-x-front-gap.txt", 20);
    row["capture"]["columns"] = {{"time_s", 1}, {"ax", 2}, {"ay", 3}, {"az", 4}};
    row["capture"]["units"] = {{"time_s", "us"}, {"ax", "mgn"}, {"ay", "mgn"}, {"az", "mgn"}};
    const auto result = evaluate(row);
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    compareMode(*result, "x.centre.mode_1", 44.1, 0.055, 0.006);
    compareMode(*result, "x.centre.mode_2", 77, 0.05, 0.006);
    const Finding* gap = findingOf(*result, "gap");
    QVERIFY(gap);
    QVERIFY2(gap->text.find("0.25 s") != std::string::npos, gap->text.c_str());

    // Sweep and capture do not last equally long when 30 s are entered; the modes are found all the same.
    row["sweep_s"] = 30;
    const auto longer = evaluate(row);
    QVERIFY(longer.has_value());
    QVERIFY(findingOf(*longer, "sweep-cut-short"));
    compareMode(*longer, "x.centre.mode_1", 44.1, 0.055, 0.006);
    compareMode(*longer, "x.centre.mode_2", 77, 0.05, 0.006);
  }

  void clipped() {
    const auto result = evaluate(sweep("x", "clipped.csv", 2.5));
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    QVERIFY(findingOf(*result, "clipped"));
    QVERIFY(result->settings.empty());
    QCOMPARE(result->verdict(), Verdict::undecided);
  }

  void faulty_data() {
    QTest::addColumn<QString>("file");
    for (const char* name : {"backwards", "binary", "empty", "nan", "ragged", "text"}) {
      QTest::newRow(name) << QString("faulty-%1.csv").arg(name);
    }
  }
  void faulty() {
    QFETCH(QString, file);
    const auto result = evaluate(sweep("x", file.toUtf8().constData(), 30));
    QVERIFY(!result);
    QVERIFY2(result.error().starts_with("Captures, row 1, Capture: "), result.error().c_str());
    QVERIFY(result.error().ends_with('.'));
  }
};

FETTLE_TEST(TestResonanceShared)
#include "test_resonance_shared.moc"
