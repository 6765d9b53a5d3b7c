#include <QTest>
#include <cmath>
#include <optional>

#include "core/intake/file_bytes.h"
#include "core/intake/height_grid.h"
#include "core/steps/bed_shape.h"
#include "core/steps/catalogue.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/field_table.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

Json soaked(Json inputs, double minutes = 20) {
  inputs["bed_C"] = 60;
  inputs["soak_minutes"] = minutes;
  return inputs;
}

}  // namespace

class TestBedShape : public QObject {
  Q_OBJECT
  const Step& step = *findStep("bed-shape");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

  /// A grid of the folder of outside data; nothing where the file is not, an empty one when it cannot be
  /// read.
  static std::optional<Json> sharedGrid(const char* name) {
    const QString path = outsideFile(QStringLiteral("inputs/") + name);
    if (path.isEmpty()) {
      return std::nullopt;
    }
    GridOptions options;
    options.useSuggested = true;
    const auto grid = readGrid(readFileBytes(path.toStdString()).value_or(std::string()), options);
    return grid ? soaked({{"grid", {{"x", grid->x}, {"y", grid->y}, {"z", grid->z}}}}) : Json::object();
  }

 private slots:
  void everythingIsDescribed() {
    const Json net = netOf(7, 7, [](double x, double y) { return 1e-3 * x - 2e-4 * y + 1e-6 * x * x; });
    for (const auto& inputs : {net, pointsOf(net), Json{{"points", pointsOf(netOf(2, 2, flat))["points"]}},
                               netOf(6, 6, [](double x, double) { return x > 240 ? -0.9 : 0; })}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
      QCOMPARE(result.charts.size(), std::size_t(4));
    }
  }

  // Built: z = 0.0007 x − 0.0003 y + 0.5 rises 0.07 and −0.03 mm per 100 mm; over 300 mm by 0.21 + 0.09 mm.
  void tiltOfAPlane() {
    const auto result =
        evaluated(netOf(7, 7, [](double x, double y) { return 0.0007 * x - 0.0003 * y + 0.5; }));
    VERIFY_NEAR(valueOf(result, "tilt_x"), 0.07, 1e-12);
    VERIFY_NEAR(valueOf(result, "tilt_y"), -0.03, 1e-12);
    VERIFY_NEAR(valueOf(result, "range_raw"), 0.30, 1e-12);
    VERIFY_NEAR(valueOf(result, "flatness_ls"), 0, 1e-12);
    VERIFY_NEAR(valueOf(result, "flatness_mz"), 0, 1e-12);
  }

  // Built from its coefficients: u, v run from −1 to 1 over 300 mm.
  void bowAndTwist() {
    const auto result = evaluated(netOf(7, 5, [](double x, double y) {
      const double u = (x - 150) / 150;
      const double v = (y - 100) / 100;
      return 0.1 + 0.02 * u - 0.01 * v + 0.08 * u * u - 0.05 * v * v + 0.015 * u * v;
    }));
    VERIFY_NEAR(valueOf(result, "bow_x"), 0.08, 1e-12);
    VERIFY_NEAR(valueOf(result, "bow_y"), -0.05, 1e-12);
    VERIFY_NEAR(valueOf(result, "twist"), 0.015, 1e-12);
  }

  // By hand: corners 0, 0, 0, h have least-squares residuals ±h/4, so flatness h/2 and rms h/4, and a
  // minimum zone of h/2.
  void flatnessOfFourCorners() {
    const auto result =
        evaluated(netOf(2, 2, [](double x, double y) { return x > 0 && y > 0 ? 0.4 : 0.0; }));
    VERIFY_NEAR(valueOf(result, "flatness_ls"), 0.2, 1e-12);
    VERIFY_NEAR(valueOf(result, "flatness_mz"), 0.2, 1e-12);
    VERIFY_NEAR(valueOf(result, "rms"), 0.1, 1e-12);
    QVERIFY(!result.quantity("bow_x"));
    QVERIFY(!result.find("bow_x")->why.empty());
  }

  // Five measured points of a plate; SciPy 1.10 (lstsq, linprog with HiGHS): 0.0720973132, 0.0672622951.
  void minimumZoneIsLessThanLeastSquares() {
    Json points = Json::array();
    for (const auto& p : {std::array{11.5, 7.0, 1.1},
                          {18.5, 6.9, 1.03},
                          {4.5, 13.0, 1.02},
                          {25.5, 30.0, 1.03},
                          {11.5, 37.5, 1.02}}) {
      points.push_back({{"x", p[0]}, {"y", p[1]}, {"z", p[2]}});
    }
    const auto result = evaluated({{"points", points}});
    VERIFY_NEAR(valueOf(result, "flatness_ls"), 0.0720973132, 1e-10);
    VERIFY_NEAR(valueOf(result, "flatness_mz"), 0.0672622951, 1e-10);
    QVERIFY(findingOf(result, "not-a-grid"));
    QVERIFY(!result.quantity("edge_drop"));
  }

  // By hand for a 2 × 2 net of 50 mm: Σ(x − 25)² = 4·25², so u(slope) = u_n/50 per mm; u_n² = 0.001²/12 +
  // 0.003²; the limit of error 0.005 enters once over the span: 100·0.005/√3/50.
  void uncertaintyIsThatOfTheProbe() {
    StepContext context;
    context.accepted["probe-repeatability"]["s_mm"] = plainQuantity(0.003, "mm");
    const auto result = evaluated(netOf(2, 2, flat), context);
    const double noise = std::sqrt(1e-6 / 12 + 9e-6);
    const double tilt = std::hypot(100 * noise / 50, 100 * 0.005 / std::sqrt(3.0) / 50);
    VERIFY_NEAR(*result.quantity("tilt_x")->u, tilt, 1e-12);
    VERIFY_NEAR(*result.quantity("flatness_mz")->u, std::sqrt(2.0) * noise, 1e-12);
    VERIFY_NEAR(*result.quantity("rms")->u, noise / 2, 1e-12);
    QVERIFY(!findingOf(result, "probe-scatter-unknown"));
    QVERIFY(findingOf(evaluated(netOf(2, 2, flat)), "probe-scatter-unknown"));
  }

  void flatnessIsJudgedByTheUsersLimit() {
    const Json inputs = netOf(4, 4, [](double x, double y) { return x > 0 && y > 0 ? 0.1 : 0.0; });
    QCOMPARE(evaluated(inputs).verdict(), Verdict::none);
    StepContext context;
    context.tolerances["bed-shape.flatness_mz"] = {std::nullopt, 0.2};
    QCOMPARE(verdictOf(evaluated(inputs, context), "flatness_mz"), Verdict::pass);
    context.tolerances["bed-shape.flatness_mz"] = {std::nullopt, 0.05};
    QCOMPARE(evaluated(inputs, context).verdict(), Verdict::fail);
  }

  void pointsThatFillAGridAreOne() {
    const Json net = netOf(6, 6, [](double x, double y) { return 1e-3 * x + (y > 249 ? -0.8 : 0); });
    Json points = pointsOf(net);
    for (std::size_t i = 0; i < points["points"].size(); ++i) {
      auto& x = points["points"][i]["x"];
      x = x.get<double>() + (i % 3 == 0 ? 0.05 : -0.04);
    }
    QVERIFY(findingOf(evaluated(points), "edge-drop"));
    points["points"][7]["x"] = 50.5;
    QVERIFY(findingOf(evaluated(points), "not-a-grid"));
  }

  void shortSoakIsACaution() {
    QCOMPARE(findingOf(evaluated(soaked(netOf(4, 4, flat), 14)), "short-soak")->severity,
             Severity::caution);
    QVERIFY(!findingOf(evaluated(soaked(netOf(4, 4, flat), 15)), "short-soak"));
  }

  void withoutHeightsEveryResultSaysWhatItLacks() {
    Json blank = netOf(3, 3, flat);
    for (auto& row : blank["grid"]["z"]) {
      row = {nullptr, nullptr, nullptr};
    }
    for (const Json& inputs : {Json::object(), blank}) {
      const auto empty = evaluated(inputs);
      QVERIFY(!empty.complete);
      QCOMPARE(empty.missing, std::vector<std::string>{"grid"});
      QCOMPARE(empty.values.size(), step.results.size());
      QCOMPARE(empty.find("flatness_mz")->lacks, std::vector<std::string>{"grid"});
      QCOMPARE(empty.charts.size(), std::size_t(4));
      QVERIFY(empty.charts[0].isEmpty() && !empty.charts[0].whenEmpty.empty());
    }
    QVERIFY(evaluated(pointsOf(netOf(3, 3, flat))).missing.empty());
  }

  // Built: a plane, which the other 15 heights determine as well. The map shows the cell as not known.
  void aBlankOrRefusedCellLeavesTheOthers() {
    for (const Json& cell : {Json(), Json("high"), Json(5000)}) {
      Json inputs = netOf(4, 4, [](double x, double y) { return 0.0007 * x - 0.0003 * y; });
      inputs["grid"]["z"][1][2] = cell;
      const auto result = evaluated(inputs);
      QVERIFY(result.complete);
      VERIFY_NEAR(valueOf(result, "tilt_x"), 0.07, 1e-12);
      VERIFY_NEAR(valueOf(result, "tilt_y"), -0.03, 1e-12);
      QVERIFY(findingOf(result, "blank-cells") && findingOf(result, "not-a-grid"));
      QVERIFY(!result.quantity("edge_drop") && !result.quantity("density_error_mm"));
      QCOMPARE(unsoundCharts(result), QString());
      QCOMPARE(undescribed(step, result), QString());
      const auto& z = chartOf(result, "map")->surface->z;
      QVERIFY(std::isnan(z[1][2]) && std::isfinite(z[1][1]));
      QVERIFY(toJson(*chartOf(result, "map"))["z"][1][2].is_null());
      QCOMPARE(chartOf(result, "cuts")->series.at(0).x.size(), std::size_t(15));
      if (!cell.is_null()) {
        QCOMPARE(findingOf(result, "refused")->at, std::string("grid.z[2][3]"));
      }
    }
  }

  // Built: the right column was not probed; what is left fills a grid again, whose left edge lies 0.9 mm
  // low.
  void aColumnLeftBlankLeavesAGrid() {
    Json inputs = netOf(6, 6, [](double x, double) { return x < 1 ? -0.9 : 0; });
    for (auto& row : inputs["grid"]["z"]) {
      row[5] = nullptr;
    }
    const auto result = evaluated(inputs);
    QVERIFY(findingOf(result, "blank-cells") && !findingOf(result, "not-a-grid"));
    QVERIFY(findingOf(result, "edge-drop")->text.starts_with("Left"));
    VERIFY_NEAR(valueOf(result, "edge_drop"), -0.9, 1e-9);
  }

  // Built: nine points of a plane and one that contradicts the fifth; neither of the two counts.
  void contradictoryPointsLeaveTheOthers() {
    Json points = pointsOf(netOf(3, 3, [](double x, double) { return 0.001 * x; }));
    points["points"].push_back({{"x", 50.05}, {"y", 50}, {"z", 0.2}});
    const auto result = evaluated(points);
    QCOMPARE(countOf(result, "refused"), 1);
    QCOMPARE(findingOf(result, "refused")->at, std::string("points[10]"));
    QVERIFY(findingOf(result, "refused")->text.find("rows 5 and 10") != std::string::npos);
    VERIFY_NEAR(valueOf(result, "tilt_x"), 0.1, 1e-12);
    VERIFY_NEAR(valueOf(result, "range_raw"), 0.1, 1e-12);
    points["points"][9]["z"] = 0.05;
    QVERIFY(findingOf(evaluated(points), "repeated-point"));
    points["points"][9] = {{"x", 90}, {"y", 20}, {"z", nullptr}};
    const auto half = evaluated(points);
    QCOMPARE(half.missing, std::vector<std::string>{"points[10].z"});
    VERIFY_NEAR(valueOf(half, "tilt_x"), 0.1, 1e-12);
    QVERIFY(half.complete);
  }

  void heightsThatMakeNoPlaneAreRefused() {
    const Json two{{"points", {{{"x", 0}, {"y", 0}, {"z", 0}}, {{"x", 9}, {"y", 0}, {"z", 1}}}}};
    Json line = Json::array();
    for (int i = 0; i < 5; ++i) {
      line.push_back({{"x", 10 * i}, {"y", 20 * i}, {"z", 0.25 * i}});
    }
    for (const Json& inputs : {two, Json{{"points", line}}}) {
      const auto result = evaluated(inputs);
      QVERIFY(!result.complete);
      QCOMPARE(findingOf(result, "refused")->at, std::string("points"));
      VERIFY_NEAR(valueOf(result, "range_raw"), 1, 1e-12);  // needs no plane
      QCOMPARE(result.find("flatness_mz")->why, findingOf(result, "refused")->text);
      QCOMPARE(undescribed(step, result), QString());
      QVERIFY(!chartOf(result, "map")->isEmpty());
    }
    Json far = netOf(4, 4, flat);
    far["grid"]["x"][3] = 1e200;
    QCOMPARE(findingOf(evaluated(far), "refused")->at, std::string("grid"));
    Json repeated = netOf(4, 4, flat);
    repeated["grid"]["x"][2] = 50;
    QCOMPARE(findingOf(evaluated(repeated), "refused")->at, std::string("grid"));
  }

  // Expected: README beside the file, "the right column is off the bed: about 0.9 mm drop"; the median step
  // by SciPy/NumPy: −0.8715 mm.
  void bedAsFound() {
    const auto inputs = sharedGrid("bed-grid-as-found.txt");
    if (!inputs) {
      QSKIP("Needs inputs/bed-grid-as-found.txt in the folder that FETTLE_OUTSIDE_DATA names.");
    }
    const auto result = evaluated(*inputs);
    QVERIFY(result.complete);
    QCOMPARE(countOf(result, "edge-drop"), 1);
    QVERIFY(findingOf(result, "edge-drop")->text.starts_with("Right side"));
    VERIFY_NEAR(valueOf(result, "edge_drop"), -0.8715, 1e-9);
    QCOMPARE(result.verdict(), Verdict::fail);
    QCOMPARE(countOf(result, "spike") + countOf(result, "step"), 0);
  }

  // Expected: README beside the file, tilt about 0.07 and −0.03 mm per 100 mm; to the digits shown by NumPy
  // 1.24 lstsq and SciPy 1.10 linprog (HiGHS).
  void bedAfterCorrection() {
    const auto inputs = sharedGrid("bed-grid-after-correction.txt");
    const QString file = outsideFile("inputs/bed-points.csv");
    if (!inputs || file.isEmpty()) {
      QSKIP("Needs the bed files of inputs/ in the folder that FETTLE_OUTSIDE_DATA names.");
    }
    const auto points = tableOfFile(file, *findField(step.fields, "points"));
    QVERIFY2(points, points ? "" : points.error().c_str());
    for (const auto& given : {*inputs, soaked({{"points", *points}})}) {
      const auto result = evaluated(given);
      VERIFY_NEAR(valueOf(result, "tilt_x"), 0.07113756613756612, 1e-9);
      VERIFY_NEAR(valueOf(result, "tilt_y"), -0.03143738977072313, 1e-9);
      VERIFY_NEAR(valueOf(result, "range_raw"), 0.311, 1e-9);
      VERIFY_NEAR(valueOf(result, "flatness_ls"), 0.13317142857142858, 1e-9);
      VERIFY_NEAR(valueOf(result, "flatness_mz"), 0.1275, 1e-9);
      VERIFY_NEAR(valueOf(result, "rms"), 0.03800934020317606, 1e-9);
      VERIFY_NEAR(valueOf(result, "bow_x"), 0.08171503, 1e-8);
      VERIFY_NEAR(valueOf(result, "bow_y"), -0.04752604, 1e-8);
      VERIFY_NEAR(valueOf(result, "twist"), 0.0014949, 1e-7);
      for (const char* code : {"edge-drop", "edge-curl", "spike", "step", "not-a-grid"}) {
        QCOMPARE(countOf(result, code), 0);
      }
    }
  }
};

FETTLE_TEST(TestBedShape)
#include "test_bed_shape.moc"
