#include <QFile>
#include <QTest>
#include <cmath>
#include <stdexcept>

#include "core/steps/catalogue.h"
#include "core/steps/temperature_sensor/curves.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

using Pairs = std::vector<std::pair<double, double>>;  ///< reference, indicated

Json inputsOf(const Pairs& pairs, const char* curve = "") {
  Json points = Json::array();
  for (const auto& [reference, indicated] : pairs) {
    points.push_back({{"indicated_C", indicated}, {"reference_C", reference}});
  }
  Json inputs{{"heater", "hot_end"}, {"points", points}};
  if (*curve) {
    inputs["configured_curve"] = curve;
  }
  return inputs;
}

const Pairs nearlyRight{{30, 30.2}, {60, 60.5}, {100, 101.0}, {150, 151.8}, {200, 202.4}};

// A published table of a 100 kΩ glass bead, B 25/85 4267 (33490 Ω at 50 °C, 5556 at 100, 1360 at 150, 439.3
// at 200, 246.8 at 230, 174 at 250), as a controller that takes it for B 3950 shows it. Made in Python:
// 1/(1/298.15 + ln(R/100000)/3950) − 273.15, two decimals.
const Pairs readAs3950{{50, 51.83},   {100, 108.2},  {150, 168.16},
                       {200, 231.92}, {230, 272.13}, {250, 299.77}};

// The same bead read by its own curve but with 10 kΩ where 4.7 kΩ are configured: resistances 0.47 of the
// true ones. Made in Python by the fitted Steinhart–Hart coefficients, two decimals.
const Pairs readWithOtherBias{{50, 69.48},   {100, 125.39}, {150, 182.22},
                              {200, 240.05}, {230, 275.26}, {250, 298.94}};

}  // namespace

class TestTemperatureSensor : public QObject {
  Q_OBJECT
  const Step& step = *findStep("temperature-sensor");

  StepResult evaluated(const Json& inputs, const StepContext& context = {}) const {
    return evaluatedOrEnd(step, inputs, context);
  }

 private slots:
  void everythingIsDescribed() {
    Json bias = inputsOf(readWithOtherBias, "ntc_100k_4267_table");
    bias["bias_ohm"] = 4700;
    for (const auto& inputs : {inputsOf(nearlyRight), inputsOf(nearlyRight, "pt1000"),
                               inputsOf(readAs3950, "ntc_100k_3950"), bias}) {
      const auto result = evaluated(inputs);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
      QVERIFY(result.complete);
    }
  }

  // NumPy 1.24, lstsq; the reference's e = √(1² + 3²) once in the offset, over the span of 172.2 in the
  // slope.
  void lineAsNumpy() {
    const auto result = evaluated(inputsOf(nearlyRight));
    VERIFY_NEAR(valueOf(result, "hot_end.offset_C"), 0.25514094, 1e-8);
    VERIFY_NEAR(valueOf(result, "hot_end.slope"), 0.98685528, 1e-8);
    VERIFY_NEAR(*result.quantity("hot_end.offset_C")->u, 1.8271497462, 1e-9);
    VERIFY_NEAR(*result.quantity("hot_end.slope")->u, 0.0106178312, 1e-9);
  }

  // By hand: 202.4 − 200 = +2.4; u² = 0.1²/12 + 0.1²/12 + (1² + 3²)/3, so g = 1.645·1.826 = 3.00 exceeds
  // 5 − 2.4: undecided.
  void largestDeviationKeepsItsSign() {
    const auto result = evaluated(inputsOf(nearlyRight));
    VERIFY_NEAR(valueOf(result, "hot_end.largest_deviation_C"), 2.4, 1e-9);
    VERIFY_NEAR(*result.quantity("hot_end.largest_deviation_C")->u, std::sqrt(0.01 / 6 + 10.0 / 3), 1e-9);
    QCOMPARE(verdictOf(result, "hot_end.largest_deviation_C"), Verdict::undecided);
    const auto low = evaluated(inputsOf({{30, 30}, {100, 98}, {200, 190}}));
    VERIFY_NEAR(valueOf(low, "hot_end.largest_deviation_C"), -10, 1e-9);
    QCOMPARE(verdictOf(low, "hot_end.largest_deviation_C"), Verdict::fail);
    const auto good = evaluated(inputsOf({{30, 30}, {100, 100.5}, {200, 201}}));
    QCOMPARE(verdictOf(good, "hot_end.largest_deviation_C"), Verdict::pass);
  }

  void noToleranceAbove250() {
    const auto result = evaluated(inputsOf({{30, 30}, {100, 100.5}, {200, 201}, {280, 300}}));
    VERIFY_NEAR(valueOf(result, "hot_end.largest_deviation_C"), 20, 1e-9);
    QCOMPARE(verdictOf(result, "hot_end.largest_deviation_C"), Verdict::pass);
    const auto above = evaluated(inputsOf({{260, 290}, {280, 300}}));
    QCOMPARE(verdictOf(above, "hot_end.largest_deviation_C"), Verdict::none);
  }

  void wrongCurveIsNamed() {
    const auto result = evaluated(inputsOf(readAs3950, "ntc_100k_3950"));
    const Finding* finding = findingOf(result, "wrong-curve");
    QVERIFY(finding);
    QVERIFY(finding->text.find("but \"NTC 100 kΩ, B 25/85 4267 K, by table\" fits") != std::string::npos);
    QCOMPARE(result.settings.size(), std::size_t(1));
    QCOMPARE(result.settings[0].proposed.text, std::string("NTC 100 kΩ, B 25/85 4267 K, by table"));
  }

  // The dashed line of the best curve passes through the references.
  void chartShowsTheLikelyCurve() {
    const auto result = evaluated(inputsOf(readAs3950, "ntc_100k_3950"));
    const Chart* chart = chartOf(result, "curves");
    QVERIFY(chart);
    const auto likely = std::find_if(chart->series.begin(), chart->series.end(), [](const Series& series) {
      return series.role == SeriesRole::comparison;
    });
    QVERIFY(likely != chart->series.end());
    VERIFY_NEAR(likely->y.front(), 50, 0.1);
    VERIFY_NEAR(likely->y.back(), 250, 0.1);
  }

  // The deviations come first, with the limits, ±U (two instruments' u by hand as in
  // largestDeviationKeepsItsSign, t(0.975, ∞) = 1.96), and the best curve as what it makes of them: at 50
  // °C it explains 51.83 − 50, at 250 °C 299.77 − 250.
  void deviationsComeFirst() {
    const auto result = evaluated(inputsOf(readAs3950, "ntc_100k_3950"));
    const Chart& chart = result.charts.front();
    QCOMPARE(chart.view, std::string("deviations"));
    QCOMPARE(chart.lines.size(), std::size_t(2));
    QCOMPARE(chart.lines[1].label, std::string("limit 5 °C, to 250 °C"));
    VERIFY_NEAR(chart.series.at(0).y.front(), 1.83, 1e-9);
    const Series& bar = chart.series.at(1);
    VERIFY_NEAR(bar.y.back() - bar.y.front(), 2 * 1.96 * std::sqrt(0.01 / 6 + 10.0 / 3), 0.001);
    const auto likely = std::find_if(chart.series.begin(), chart.series.end(), [](const Series& series) {
      return series.role == SeriesRole::comparison;
    });
    QVERIFY(likely != chart.series.end());
    VERIFY_NEAR(likely->y.front(), 1.83, 0.1);
    VERIFY_NEAR(likely->y.back(), 49.77, 0.1);
  }

  void wrongBiasResistorIsNamed() {
    Json inputs = inputsOf(readWithOtherBias, "ntc_100k_4267_table");
    inputs["bias_ohm"] = 4700;
    const auto result = evaluated(inputs);
    const Finding* finding = findingOf(result, "wrong-curve");
    QVERIFY(finding && finding->text.find("another bias resistor\" fits") != std::string::npos);
    VERIFY_NEAR(valueOf(result, "hot_end.bias_factor"), 1 / 0.47, 1e-3);
    VERIFY_NEAR(valueOf(result, "hot_end.bias_ohm"), 10000, 5);
    QVERIFY(result.settings.empty());
  }

  // A right curve and a thermometer that reads 1.1 °C low: a bias of another value would fit better by far,
  // but the configured curve is inside the 2 °C itself.
  void aRightCurveIsNotAccused() {
    const auto result = evaluated(inputsOf(
        {{41.1, 40}, {81.2, 80}, {121.0, 120}, {161.1, 160}, {201.1, 200}}, "ntc_100k_4267_table"));
    QVERIFY(findingOf(result, "wrong-curve") == nullptr);
  }

  // The bias fault, a factor of 2, in figures of one's own, with the bed as the run's subject.
  void ownThermistorAndSubject() {
    const SensorCurve own = ownBetaCurve(50000, 4100);
    Json points = Json::array();
    for (const double reference : {25.0, 60.0, 90.0, 110.0}) {
      const double shown = *own.temperature(own.resistance(reference) / 2);
      points.push_back({{"indicated_C", shown}, {"reference_C", reference}});
    }
    Json inputs{{"points", points}, {"configured_curve", "own_beta"}};
    StepContext context;
    context.subject = "bed";
    const auto incomplete = evaluated(inputs, context);
    QCOMPARE(incomplete.missing, (std::vector<std::string>{"r25_ohm", "beta_K"}));
    inputs["r25_ohm"] = 50000;
    inputs["beta_K"] = 4100;
    const auto result = evaluated(inputs, context);
    VERIFY_NEAR(valueOf(result, "bed.bias_factor"), 2, 1e-6);
    QVERIFY(!result.quantity("bed.bias_ohm") && result.find("bed.bias_ohm"));
  }

  // A sensor that reads right is no wrong curve; where none is configured there is nothing to accuse.
  void noCurveIsNamedWithoutNeed() {
    QVERIFY(!findingOf(evaluated(inputsOf(nearlyRight, "ntc_100k_4267_table")), "wrong-curve"));
    const auto unknown = evaluated(inputsOf(readAs3950));
    QVERIFY(findingOf(unknown, "curve-not-known") && !findingOf(unknown, "wrong-curve"));
  }

  void curveAsFoundCounts() {
    StepContext context;
    context.asFound["hot_end.sensor_curve"].text = "ntc_100k_3950";
    QVERIFY(findingOf(evaluated(inputsOf(readAs3950), context), "wrong-curve"));
  }

  void heaterIsAsked() {
    Json inputs = inputsOf(nearlyRight);
    inputs.erase("heater");
    const auto result = evaluated(inputs);
    QCOMPARE(result.missing, std::vector<std::string>{"heater"});
    StepContext context;
    context.subject = "chamber";
    QVERIFY(evaluated(inputs, context).quantity("chamber.slope"));
    QVERIFY(findingOf(evaluated(inputsOf(nearlyRight), context), "other-heater"));
  }

  void unusablePointsAreRefused() {
    const auto onePoint = evaluated(inputsOf({{30, 30}}));
    const ResultValue* slope = onePoint.find("hot_end.slope");
    QVERIFY(slope && !slope->quantity && !slope->why.empty() && !onePoint.quantity("hot_end.offset_C"));
    QVERIFY(refusalOf(step, inputsOf({{30, 50}, {40, 50}})).contains("50 °C"));
    QVERIFY(refusalOf(step, inputsOf({{30, 30}, {4000, 50}})).contains("4000"));
  }

  void nearlyEqualIndicationsAreNoSpan() {
    QVERIFY(refusalOf(step, inputsOf({{30, 50}, {40, 50.1}})).contains("within the resolution"));
    QVERIFY(refusalOf(step, inputsOf({{30, 50}, {40, 50.5}})).isEmpty());
  }

  // Three points have one degree of freedom: whichever is off, the line shares it out among them.
  void outliersNeedFivePoints() {
    QVERIFY(!findingOf(evaluated(inputsOf({{24.9, 25.1}, {99, 100.2}, {197.3, 200.5}})), "outlier"));
    const Pairs oneOff{{20, 20}, {50, 50}, {80, 80}, {110, 125}, {140, 140}, {170, 170}, {200, 200}};
    const auto result = evaluated(inputsOf(oneOff));
    const auto* outlier = findingOf(result, "outlier");
    QVERIFY(outlier && outlier->text.find("Row 4") != std::string::npos);
  }

  void theLargestDeviationIsOneReading() {
    QVERIFY(findingOf(evaluated(inputsOf(nearlyRight)), "single-reading"));
  }

  void excludedPointsDoNotCount() {
    Json inputs = inputsOf(nearlyRight);
    inputs["points"].push_back({{"indicated_C", 100}, {"reference_C", 50}, {"excluded", "probe slipped"}});
    VERIFY_NEAR(valueOf(evaluated(inputs), "hot_end.slope"), 0.98685528, 1e-8);
  }

  void everyCurveIsThereAndBack() {
    QVERIFY(sensorCurves().size() >= 10);
    for (const auto& curve : sensorCurves()) {
      QVERIFY2(!curve.source.empty() && !curve.label.empty(), curve.key.c_str());
      for (const double part : {0.0, 0.3, 0.7, 1.0}) {
        const double temperature = curve.from + part * (curve.to - curve.from);
        VERIFY_NEAR(*curve.temperature(curve.resistance(temperature)), temperature, 1e-6);
      }
    }
  }

  // Published tables of parts with these figures (ntc_tables.csv in the folder of outside data names them);
  // the tolerance is the largest error that stands beside each curve in the catalogue.
  void publishedTables_data() {
    QTest::addColumn<QString>("part");
    QTest::addColumn<QString>("key");
    QTest::addColumn<double>("tolerance");
    QTest::newRow("glass bead") << "104GT"
                                << "ntc_100k_4267_table" << 0.08;
    QTest::newRow("100 kΩ chip") << "NCP03WF104"
                                 << "ntc_100k_4250_table" << 0.20;
    QTest::newRow("47 kΩ chip") << "NCP15WB473"
                                << "ntc_47k_4050_table" << 0.28;
    QTest::newRow("10 kΩ chip") << "B57330V2103"
                                << "ntc_10k_3435_table" << 0.08;
  }
  void publishedTables() {
    const QString path = outsideFile("reference/ntc_tables.csv");
    SKIP_WITHOUT_OUTSIDE_FILE(path);
    QFETCH(QString, part);
    QFETCH(QString, key);
    QFETCH(double, tolerance);
    const SensorCurve* curve = findSensorCurve(key.toStdString());
    QFile file(path);
    QVERIFY(curve && file.open(QIODevice::ReadOnly));
    int rows = 0;
    for (const QByteArray& line : file.readAll().split('\n')) {
      const auto cells = line.trimmed().split(',');
      if (cells.size() == 3 && cells[0] == part.toUtf8()) {
        VERIFY_NEAR(*curve->temperature(cells[2].toDouble()), cells[1].toDouble(), tolerance);
        ++rows;
      }
    }
    QVERIFY(rows > 30);
  }

  void aSpoiltTableIsSaid() {
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, sensorCurvesFrom("a | beta | 100"));
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument,
                             sensorCurvesFrom("a | beta | 100 | x | | | 0 | 1 | label | source"));
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument,
                             sensorCurvesFrom("a | wire | 100 | 1 | | | 0 | 1 | label | source"));
  }
};

FETTLE_TEST(TestTemperatureSensor)
#include "test_temperature_sensor.moc"
