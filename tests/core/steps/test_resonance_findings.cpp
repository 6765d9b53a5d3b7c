#include <QTest>
#include <algorithm>
#include <cmath>
#include <random>

#include "tests/support/near.h"
#include "tests/support/resonance_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// What is said of captures that are faulty, sweeps that do not suit, and machines no shaper suits. The
/// faults are put in here.
class TestResonanceFindings : public QObject, private ResonanceBench {
  Q_OBJECT

 private slots:
  void initTestCase() { captures["two"] = sweepOf(twoModes); }

  void findingsOfTheSampling() {
    const CapturePointer good = captures["two"];
    captures["gap"] = changed(good, [](Capture& c) {
      for (auto& [key, column] : c.columns) {
        column.erase(column.begin() + 25000, column.begin() + 25400);
      }
    });
    captures["jitter"] = changed(good, [](Capture& c) {
      std::mt19937 engine(2);
      std::normal_distribution<double> shift(0, 0.05 / 1600);
      for (double& t : c.columns["time_s"]) {
        t += shift(engine);
      }
    });
    captures["clipped"] = changed(good, [](Capture& c) {
      for (double& sample : c.columns["ax"]) {
        sample = std::clamp(sample, -9000.0, 9000.0);
      }
    });
    const StepResult gap = run({{"captures", {sweepRow("x", "a", "gap")}}});
    QVERIFY(findingOf(gap, "gap"));
    QVERIFY(findingOf(gap, "gap")->text.find("0.25 s") != std::string::npos);
    QVERIFY(findingOf(gap, "gap")->text.find("65 Hz") != std::string::npos);  // 5 + 115/30·15.6
    VERIFY_NEAR(valueOf(gap, "x.a.mode_1_hz"), 52, 0.7);

    const StepResult jitter = run({{"captures", {sweepRow("x", "a", "jitter")}}});
    QVERIFY(findingOf(jitter, "jitter"));

    const StepResult clipped = run({{"captures", {sweepRow("x", "a", "clipped")}}});
    QVERIFY(findingOf(clipped, "clipped"));
    QCOMPARE(findingOf(clipped, "clipped")->severity, Severity::fault);
    QVERIFY(clipped.settings.empty());
    QVERIFY(!clipped.quantity("x.mode_1_hz"));
    QCOMPARE(clipped.verdict(), Verdict::undecided);
  }

  void findingsOfTheSweep() {
    Shaking slowSampling;
    slowSampling.rate = 400;
    captures["400"] = sweepOf(twoModes, slowSampling);
    const StepResult slow = run({{"captures", {sweepRow("x", "a", "400")}}});
    QVERIFY(findingOf(slow, "rate-too-low"));

    // 3.6·(0.015·40)² = 1.3 Hz/s, the sweep runs at 3.8; 2ζf = 1.2 Hz, three bins are 2.3 Hz
    captures["sharp"] = sweepOf({{40, 0.015, 0.8}});
    const StepResult sharp = run({{"captures", {sweepRow("x", "a", "sharp")}}});
    QVERIFY(findingOf(sharp, "sweep-too-fast"));
    QVERIFY(findingOf(sharp, "resolution-too-coarse"));

    Json longer = sweepRow("x", "a", "two");
    longer["sweep_s"] = 40;
    QVERIFY(findingOf(run({{"captures", {longer}}}), "sweep-cut-short"));

    captures["noise"] = sweepOf({});
    const StepResult none = run({{"captures", {sweepRow("x", "a", "noise")}}});
    QVERIFY(findingOf(none, "no-mode"));
    QVERIFY(none.settings.empty());
    QCOMPARE(verdictOf(none, "x.mode_1_hz"), Verdict::undecided);
  }

  void stiffenFrameAndHeavyDamping() {
    captures["apart"] = sweepOf({{24, 0.04, 0.15}, {96, 0.03, 2.5}});
    const StepResult apart = run({{"captures", {sweepRow("x", "a", "apart")}}, {"residual_limit", 0.005}});
    QVERIFY(findingOf(apart, "stiffen-frame"));
    QCOMPARE(apart.settings.size(), std::size_t(3));
    captures["soft"] = sweepOf({{45, 0.25, 1.0}});
    const StepResult soft = run({{"captures", {sweepRow("x", "a", "soft")}}});
    QVERIFY(findingOf(soft, "heavy-damping"));
  }
};

FETTLE_TEST(TestResonanceFindings)
#include "test_resonance_findings.moc"
