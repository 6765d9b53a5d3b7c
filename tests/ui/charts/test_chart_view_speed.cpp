#include <QtTest>
#include <ctime>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/charts/chart_view.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

/// Of this thread, ms: what other programs do meanwhile does not count.
double processorTime() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

}  // namespace

class TestChartViewSpeed : public QObject {
  Q_OBJECT

 private slots:
  void changeAndPaint_data();
  void changeAndPaint();
};

void TestChartViewSpeed::changeAndPaint_data() {
  QTest::addColumn<bool>("isMap");
  QTest::newRow("height map, 21 by 21") << true;
  QTest::newRow("trace, 400000 samples") << false;
}

// The budget is 8 ms at the 99th percentile on a machine of its own. The check allows 16 ms, one frame of a
// screen: caches and cores are shared with whatever else runs, and that is still seen as no delay.
void TestChartViewSpeed::changeAndPaint() {
  FETTLE_SPEED_ONLY()
  QFETCH(bool, isMap);
  Chart chart = isMap ? tests::planeMap(21) : tests::longTrace(400000);
  ChartView view;
  view.resize(560, 480);
  view.show();
  QVERIFY(QTest::qWaitForWindowExposed(&view));
  std::vector<double> times;
  for (int i = 0; i < 200; ++i) {
    (isMap ? chart.surface->z[3][3] : chart.series[0].y[77]) += 0.0001;
    const double start = processorTime();
    view.setChart(chart);
    view.repaint();
    times.push_back(processorTime() - start);
  }
  std::sort(times.begin(), times.end());
  qInfo("median %.2f ms, 99th percentile %.2f ms", times[100], times[198]);
  QVERIFY(times[198] < 16);
}

FETTLE_TEST(TestChartViewSpeed)
#include "test_chart_view_speed.moc"
