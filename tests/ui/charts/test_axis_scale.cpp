#include "ui/charts/axis_scale.h"

#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"

using namespace fettle;
using namespace fettle::ui;
using fettle::tests::series;

class TestAxisScale : public QObject {
  Q_OBJECT

 private slots:
  void thereAndBack();
  void upsideDown();
  void wholeViewHoldsEverything();
  void closeToZeroStartsAtZero();
  void oneValueHasARange();
  void valuesThatCannotBeShown();
  void cellsReachHalfWay();
  void picturesEndWithTheirCells();
  void thingsHaveHalfAPlaceBeside();
};

void TestAxisScale::thingsHaveHalfAPlaceBeside() {
  Chart chart;
  chart.x = countedAxis("part");
  chart.series = {series("parts", SeriesRole::measured, {1, 2, 3}, {0.03, 0.04, 0.05})};
  QCOMPARE(wholeView(chart).x, (Range{0.5, 3.5}));
}

// Worked by hand: a third of the way in value is a third in place; on a logarithmic axis in decades.
void TestAxisScale::thereAndBack() {
  const AxisScale even({10, 40}, {100, 400}, false);
  QCOMPARE(even.place(20), 200.0);
  QCOMPARE(even.value(200), 20.0);
  const AxisScale decades({1, 1000}, {0, 300}, true);
  QCOMPARE(decades.place(100), 200.0);
  QCOMPARE(decades.value(100), 10.0);
}

void TestAxisScale::upsideDown() {
  const AxisScale scale({0, 10}, {200, 0}, false);
  QCOMPARE(scale.place(10), 0.0);
  QCOMPARE(scale.value(150), 2.5);
  const Range places = placesInView(scale, {-5, 5});
  QCOMPARE(places.from, 100.0);
  QCOMPARE(places.to, 200.0);
}

void TestAxisScale::wholeViewHoldsEverything() {
  const Chart chart = tests::hingeChart();
  const View view = wholeView(chart);
  for (const auto& s : chart.series) {
    for (std::size_t i = 0; i < s.x.size(); ++i) {
      QVERIFY(view.x.contains(s.x[i]) && view.y.contains(s.y[i]));
    }
  }
  Chart far = chart;
  far.lines.push_back({"far", 40, true});
  QVERIFY(wholeView(far).x.contains(40));
}

void TestAxisScale::closeToZeroStartsAtZero() {
  Chart chart;
  chart.series = {series("density", SeriesRole::trace, {10, 20}, {0.1, 5})};
  QCOMPARE(wholeView(chart).y.from, 0.0);
  chart.series[0].y = {4, 5};
  QVERIFY(wholeView(chart).y.from > 3);
  QCOMPARE(wholeView(chart).x, (Range{10, 20}));  // lines alone need no room beside them
}

void TestAxisScale::oneValueHasARange() {
  Chart chart;
  chart.series = {series("one", SeriesRole::measured, {3}, {0})};
  QVERIFY(wholeView(chart).x.size() > 0 && wholeView(chart).y.size() > 0);
  QVERIFY(wholeView(Chart{}).x.size() > 0);
}

void TestAxisScale::valuesThatCannotBeShown() {
  Chart chart;
  chart.y.logarithmic = true;
  chart.series = {series("density", SeriesRole::trace, {1, 2, 3, 4}, {0, 1, 100, std::nan("")})};
  const View view = wholeView(chart);
  QVERIFY(view.y.from > 0.5 && view.y.from <= 1 && view.y.to >= 100 && view.y.to < 200);
}

void TestAxisScale::cellsReachHalfWay() {
  QCOMPARE(cellEdges({1, 2, 4}), (std::vector<double>{0.5, 1.5, 3, 5}));
  QCOMPARE(cellEdges({7}), (std::vector<double>{6.5, 7.5}));
  QVERIFY(cellEdges({}).empty());
}

void TestAxisScale::picturesEndWithTheirCells() {
  const View view = wholeView(tests::loneCell(10, 5, 3, 2));
  QCOMPARE(view.x, (Range{0, 10}));
  QCOMPARE(view.y, (Range{-1, 9}));
}

FETTLE_TEST(TestAxisScale)
#include "test_axis_scale.moc"
