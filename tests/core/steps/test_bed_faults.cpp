#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/bed_nets.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// What bed-shape finds wrong with a net, and how dense it should be. Expected: by hand from the way each
/// net is built; the limits are common practice, no source.
class TestBedFaults : public QObject {
  Q_OBJECT
  const Step& step = *findStep("bed-shape");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void edgeDrop_data() {
    QTest::addColumn<int>("side");
    QTest::addColumn<int>("lines");
    const char* sides[] = {"left", "right", "front", "back"};
    for (int side = 0; side < 4; ++side) {
      for (int lines = 1; lines <= 2; ++lines) {
        QTest::addRow("%s, %d", sides[side], lines) << side << lines;
      }
    }
  }

  // Built: a tilted plane whose outer one or two lines on one side lie 0.9 mm low.
  void edgeDrop() {
    QFETCH(int, side);
    QFETCH(int, lines);
    const auto result = evaluated(netOf(6, 6, [&](double x, double y) {
      const double from[] = {x, 250 - x, y, 250 - y};
      return 0.0007 * x - 0.0003 * y - (from[side] < 50 * lines - 1 ? 0.9 : 0);
    }));
    QCOMPARE(countOf(result, "edge-drop"), 1);
    const Finding& drop = *findingOf(result, "edge-drop");
    QCOMPARE(drop.severity, Severity::fault);
    QCOMPARE(drop.see, std::string("probe-position"));
    const char* words[] = {"Left", "Right", "Front", "Back"};
    QVERIFY(drop.text.starts_with(words[side]));
    QVERIFY(drop.text.find("0.90 mm low") != std::string::npos);
    VERIFY_NEAR(valueOf(result, "edge_drop"), -0.9, 1e-9);
    QCOMPARE(result.verdict(), Verdict::fail);
    QCOMPARE(countOf(result, "spike") + countOf(result, "step") + countOf(result, "edge-curl"), 0);
    const auto& series = chartOf(result, "map")->series;
    QCOMPARE(series.at(0).role, SeriesRole::fault);
    QCOMPARE(series.at(0).x.size(), std::size_t(6 * lines));
  }

  // Built: −0.9 mm in four of six lines is a share of 67 %, in five of 83 %; the median is −0.9 mm in both.
  void edgeNeedsThreeQuartersOfTheLines() {
    const auto with = [&](double untilY) {
      return evaluated(netOf(6, 6, [&](double x, double y) {
        return x < 249 ? 0.0 : y < untilY ? -0.9 : 0.01;
      }));
    };
    QCOMPARE(countOf(with(175), "edge-drop"), 0);
    QCOMPARE(countOf(with(225), "edge-drop"), 1);
  }

  // Built: 0.4 mm on one side is a curl; 0.7 mm on both sides alike is one too; 1.2 mm is no bed any more.
  void edgeCurl() {
    const auto one = evaluated(netOf(6, 6, [](double x, double) { return x < 1 ? 0.4 : 0.0; }));
    QCOMPARE(countOf(one, "edge-curl"), 1);
    QCOMPARE(findingOf(one, "edge-curl")->severity, Severity::caution);
    QCOMPARE(one.verdict(), Verdict::none);
    const auto both = [&](double size) {
      return evaluated(netOf(6, 6, [&](double x, double) { return x < 1 || x > 249 ? size : 0.0; }));
    };
    QCOMPARE(countOf(both(0.7), "edge-curl"), 2);
    QCOMPARE(countOf(both(0.7), "edge-drop"), 0);
    QCOMPARE(both(0.7).verdict(), Verdict::none);
    QCOMPARE(countOf(both(1.2), "edge-too-far"), 2);
    QCOMPARE(both(1.2).verdict(), Verdict::fail);
    QCOMPARE(both(1.2).judgements.size(), std::size_t(2));  // of edge_drop and of flatness_mz, once each
    QCOMPARE(
        countOf(evaluated(netOf(6, 6, [](double x, double) { return x < 1 ? 0.25 : 0.0; })), "edge-curl"),
        0);
  }

  void smallGrid() {
    const auto result = evaluated(netOf(3, 6, [](double x, double) { return x < 1 ? -0.9 : 0.0; }));
    QVERIFY(findingOf(result, "grid-too-small"));
    QCOMPARE(countOf(result, "edge-drop"), 0);
    QVERIFY(!evaluated(netOf(3, 3, flat)).quantity("edge_drop"));
    QVERIFY(!findingOf(evaluated(netOf(4, 4, flat)), "grid-too-small"));
  }

  // Built: one point of a flat net 0.3 mm high; 0.08 mm is under the limit of 0.1 mm.
  void spike() {
    const auto with = [&](double size) {
      return evaluated(netOf(7, 7, [&](double x, double y) { return x == 100 && y == 150 ? size : 0.0; }));
    };
    QCOMPARE(countOf(with(0.3), "spike"), 1);
    QVERIFY(findingOf(with(0.3), "spike")->text.find("100, 150") != std::string::npos);
    QCOMPARE(countOf(with(0.08), "spike"), 0);
    // A line at 220/3 = 73.33… mm is named to a tenth.
    Json net = netOf(7, 7, [](double x, double y) { return x == 100 && y == 150 ? 0.3 : 0.0; });
    net["grid"]["x"][2] = 220.0 / 3;
    QVERIFY(findingOf(evaluated(net), "spike")->text.find("73.3, 150 ") != std::string::npos);
    QCOMPARE(countOf(with(0.3), "step"), 0);
  }

  // Built: the back half of eight lines lies higher by S. By hand the plane takes 8/42·S per line, which
  // leaves 0.81·S at the step and 0.19·S elsewhere: 1.3 mm for 1.6 mm, 0.16 mm for 0.2 mm. One line of
  // neighbours is on the step: 8 pairs.
  void stepBetweenNeighbours() {
    const auto with = [&](double size) {
      return evaluated(netOf(8, 8, [&](double, double y) { return y > 180 ? size : 0.0; }));
    };
    QCOMPARE(countOf(with(1.6), "step"), 1);
    QVERIFY(findingOf(with(1.6), "step")->text.find("(pairs: 8)") != std::string::npos);
    QCOMPARE(countOf(with(0.2), "step"), 0);
  }

  // Built: a product of parabolas is foretold exactly, so five lines are enough: 300/4 = 75 mm.
  void densityOfASmoothBed() {
    const auto result = evaluated(netOf(7, 7, [](double x, double y) { return 1e-9 * x * x * y * y; }));
    VERIFY_NEAR(valueOf(result, "density_error_mm"), 0, 1e-9);
    VERIFY_NEAR(valueOf(result, "proposed_spacing"), 75, 1e-9);
    QCOMPARE(valueOf(result, "proposed_columns"), 5.0);
  }

  // Built: every second line along x is 0.05 mm high, the foretold heights there are 0: error 0.05 mm less
  // 1.3·0.004 = 0.0448; h = 100·sqrt(0.02/0.0448) = 66.8 mm, 300/66.8 → 5 gaps → 6 lines.
  void densityOfARippledBed() {
    const Json ripples =
        netOf(7, 7, [](double x, double) { return std::lround(x / 50) % 2 == 1 ? 0.05 : 0.0; });
    StepContext context;
    context.accepted["probe-repeatability"]["s_mm"] = plainQuantity(0.004, "mm");
    const auto result = evaluated(ripples, context);
    VERIFY_NEAR(valueOf(result, "density_error_mm"), 0.0448, 1e-9);
    VERIFY_NEAR(valueOf(result, "proposed_spacing"), 100 * std::sqrt(0.02 / 0.0448), 1e-9);
    QCOMPARE(valueOf(result, "proposed_columns"), 6.0);
    VERIFY_NEAR(valueOf(evaluated(ripples), "density_error_mm"), 0.05, 1e-9);
  }

  void noAdviceForSmallOrEvenGrids() {
    for (const auto& [columns, rows] : {std::pair{6, 7}, {7, 5}, {8, 8}}) {
      const auto result = evaluated(netOf(columns, rows, flat));
      QVERIFY(!result.quantity("density_error_mm"));
      QVERIFY(result.find("density_error_mm")->why.starts_with("grid too small or even: no advice"));
    }
  }
};

FETTLE_TEST(TestBedFaults)
#include "test_bed_faults.moc"
