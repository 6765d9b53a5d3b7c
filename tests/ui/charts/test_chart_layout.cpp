#include "ui/charts/chart_layout.h"

#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

ChartLayout layoutAt(const Chart& chart, QSizeF size) {
  return layoutOf(chart, wholeView(chart), size, QFontMetricsF(fontsOf().small));
}

}  // namespace

class TestChartLayout : public QObject {
  Q_OBJECT

 private slots:
  void labelsHaveRoom_data();
  void labelsHaveRoom();
  void plansAreToScale();
  void mapsHaveAScaleOfColours();
  void topAxisIsInItsOwnUnits();
  void tinySizesDoNotBreak();
};

void TestChartLayout::labelsHaveRoom_data() {
  QTest::addColumn<QSizeF>("size");
  QTest::newRow("narrow") << QSizeF(280, 220);
  QTest::newRow("usual") << QSizeF(560, 480);
  QTest::newRow("wide") << QSizeF(1200, 600);
}

// Labels of one axis do not touch, and those of y stand between the edge and the plot.
void TestChartLayout::labelsHaveRoom() {
  QFETCH(QSizeF, size);
  const QFontMetricsF metrics(fontsOf().small);
  for (const auto& chart :
       {tests::hingeChart(), tests::bedPlan(), tests::planeMap(), tests::longTrace(1000)}) {
    const ChartLayout layout = layoutAt(chart, size);
    QVERIFY(layout.xTicks.at.size() >= 2 && layout.yTicks.at.size() >= 2);
    double end = -1e9;
    for (std::size_t i = 0; i < layout.xTicks.at.size(); ++i) {
      const double half = metrics.horizontalAdvance(layout.xTicks.labels[static_cast<qsizetype>(i)]) / 2;
      QVERIFY(layout.x.place(layout.xTicks.at[i]) - half > end);
      end = layout.x.place(layout.xTicks.at[i]) + half;
      QVERIFY(end <= size.width());
    }
    for (const auto& label : layout.yTicks.labels) {
      QVERIFY(metrics.horizontalAdvance(label) + metrics.height() < layout.plot.left());
    }
    for (const double at : layout.yTicks.at) {
      QVERIFY(layout.plot.adjusted(0, -1, 0, 1).contains(layout.place(layout.view().x.from, at)));
    }
    QVERIFY(layout.plot.top() >= metrics.height());
    QVERIFY(layout.plot.bottom() + 2 * metrics.height() < size.height());
  }
}

void TestChartLayout::plansAreToScale() {
  for (const QSizeF size : {QSizeF(560, 480), QSizeF(300, 600), QSizeF(900, 300)}) {
    for (const auto& chart : {tests::bedPlan(), tests::planeMap()}) {
      const ChartLayout layout = layoutAt(chart, size);
      const double across = layout.x.place(100) - layout.x.place(0);
      const double down = layout.y.place(0) - layout.y.place(100);
      // The plot ends on whole pixels.
      QVERIFY(std::abs(across / down - 1) < 2 / std::min(layout.plot.width(), layout.plot.height()));
      QVERIFY(layout.plot.right() <= size.width() && layout.plot.bottom() <= size.height());
    }
  }
}

void TestChartLayout::mapsHaveAScaleOfColours() {
  const ChartLayout layout = layoutAt(tests::planeMap(), {560, 480});
  QVERIFY(layout.bar.left() > layout.plot.right() && layout.bar.right() < 560);
  QCOMPARE(layout.barScale.place(0.0), layout.bar.bottom());
  QCOMPARE(layout.barScale.place(0.13),
           layout.bar.top());  // highest but the blank corner: 0.075 + 0.04 or 0.1 + 0.03
  QVERIFY(layoutAt(tests::hingeChart(), {560, 480}).bar.isEmpty());
}

void TestChartLayout::topAxisIsInItsOwnUnits() {
  const ChartLayout layout = layoutAt(tests::hingeChart(), {560, 480});
  QVERIFY(layout.topTicks.at.size() >= 3);
  for (const double at : layout.topTicks.at) {
    QVERIFY(layout.view().x.contains(at / 12));
    QCOMPARE(std::fmod(at, 50.0), 0.0);
  }
}

void TestChartLayout::tinySizesDoNotBreak() {
  for (const auto& chart : {tests::hingeChart(), tests::bedPlan(), tests::planeMap()}) {
    const ChartLayout layout = layoutAt(chart, {1, 1});
    QVERIFY(std::isfinite(layout.x.place(5)) && std::isfinite(layout.y.place(5)));
  }
}

FETTLE_TEST(TestChartLayout)
#include "test_chart_layout.moc"
