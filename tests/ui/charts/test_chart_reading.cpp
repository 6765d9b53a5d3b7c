#include "ui/charts/chart_reading.h"

#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

ChartLayout layoutAt(const Chart& chart, const std::optional<View>& view = std::nullopt) {
  return layoutOf(chart, view.value_or(wholeView(chart)), {560, 480}, QFontMetricsF(fontsOf().small));
}

QString plain(const QStringList& lines) {
  return lines.join('|').replace(QChar(QChar::Nbsp), ' ');
}

}  // namespace

class TestChartReading : public QObject {
  Q_OBJECT

 private slots:
  void nearestPoint();
  void betweenPointsOfAModel();
  void nothingFarAway();
  void pointOfANet();
  void betweenPointsOfANet();
  void blankPoint();
  void cellOfAPicture();
  void onePeakOfALongTrace();
  void pointsAreCounted();
  void summary();
};

void TestChartReading::nearestPoint() {
  const Chart chart = tests::hingeChart();
  const ChartLayout layout = layoutAt(chart);
  const auto reading = readingAt(chart, layout, layout.place(16, 0.85) + QPointF(-4, 3));
  QVERIFY(reading.has_value());
  QCOMPARE(plain(reading->lines),
           QString("measured|flow 16.00 mm³/s|print speed 192.00 mm/s|delivered / commanded 0.8500"));
  QCOMPARE(reading->place, layout.place(16, 0.85));
  QCOMPARE(reading->point, 3U);
}

// Half way between its second and third point the model has flow 16.3 and 0.843.
void TestChartReading::betweenPointsOfAModel() {
  Chart chart = tests::hingeChart();
  chart.series.erase(chart.series.begin(), chart.series.begin() + 2);
  const ChartLayout layout = layoutAt(chart);
  const auto reading = readingAt(chart, layout, layout.place(16.3, 0.843));
  QCOMPARE(reading->lines.value(0), QString("hinge"));
  QVERIFY(reading->lines.value(1).startsWith("flow 16.3"));
  QVERIFY(reading->lines.value(3).contains("0.8430"));
}

void TestChartReading::nothingFarAway() {
  const Chart chart = tests::hingeChart();
  const ChartLayout layout = layoutAt(chart);
  QVERIFY(!readingAt(chart, layout, layout.place(20, 0.98)));
  QVERIFY(!readingAt(chart, layout, {1, 1}));
  const Chart empty = tests::emptyChart();
  QVERIFY(!readingAt(empty, layoutAt(empty), {200, 200}));
}

void TestChartReading::pointOfANet() {
  const Chart chart = tests::planeMap();
  const ChartLayout layout = layoutAt(chart);
  const auto reading = readingAt(chart, layout, layout.place(50, 20) + QPointF(3, 2));
  QCOMPARE(plain(reading->lines), QString("x 50.00 mm|y 20.00 mm|height 0.0600 mm"));
}

// The plane at x 62.5, y 30 by hand: 0.0625 + 0.015 = 0.0775.
void TestChartReading::betweenPointsOfANet() {
  const Chart chart = tests::planeMap();
  const ChartLayout layout = layoutAt(chart);
  QCOMPARE(plain(readingAt(chart, layout, layout.place(62.5, 30))->lines),
           QString("x 62.50 mm|y 30.00 mm|height 0.0775 mm"));
}

void TestChartReading::blankPoint() {
  const Chart chart = tests::planeMap();
  const ChartLayout layout = layoutAt(chart);
  QVERIFY(readingAt(chart, layout, layout.place(100, 80))->lines.last().contains("not measured"));
}

void TestChartReading::cellOfAPicture() {
  const Chart chart = tests::loneCell(10, 6, 3, 2);
  const ChartLayout layout = layoutAt(chart);
  QVERIFY(
      plain(readingAt(chart, layout, layout.place(3.8, 4.7))->lines).endsWith("density 1000 (mm/s²)²/Hz"));
  QVERIFY(
      plain(readingAt(chart, layout, layout.place(4.2, 4.7))->lines).endsWith("density 1 (mm/s²)²/Hz"));
}

void TestChartReading::onePeakOfALongTrace() {
  const Chart chart = tests::longTrace(60000);
  const ChartLayout layout = layoutAt(chart);
  const auto reading = readingAt(chart, layout, layout.place(40000 / 3200.0, 9000) + QPointF(5, 5));
  QCOMPARE(reading->point, 40000U);
}

void TestChartReading::pointsAreCounted() {
  QCOMPARE(pointCount(tests::planeMap(), 0), 25U);
  QCOMPARE(pointCount(tests::hingeChart(), 2), 3U);
  QCOMPARE(pointCount(tests::hingeChart(), 9), 0U);
  const Chart chart = tests::hingeChart();
  QVERIFY(!readingOf(chart, layoutAt(chart), 0, 5));
}

void TestChartReading::summary() {
  Chart chart = tests::hingeChart();
  const QString text = chartSummary(chart, {{0, 22}, {0.7, 1}}).replace(QChar(QChar::Nbsp), ' ');
  QCOMPARE(
      text,
      QString("Delivered against flow: flow from 0.00 mm³/s to 22.00 mm³/s; delivered / commanded from "
              "0.700 to 1.000; measured (5 points); left out (1 point); hinge (3 points); "
              "limit 12.5; 5 % below the plateau."));
  chart = tests::emptyChart();
  QCOMPARE(chartSummary(chart, {}),
           QString("Earlier runs: nothing to draw yet. Enter at least four flows."));
}

FETTLE_TEST(TestChartReading)
#include "test_chart_reading.moc"
