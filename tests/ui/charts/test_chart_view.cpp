#include "ui/charts/chart_view.h"

#include <QAccessible>
#include <QMenu>
#include <QToolButton>
#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

void show(ChartView& view, const Chart& chart) {
  view.resize(560, 480);
  view.setChart(chart);
  view.show();
  QVERIFY(QTest::qWaitForWindowExposed(&view));
}

void turnWheel(ChartView& view, QPointF place, int notches) {
  QWheelEvent event(place, view.mapToGlobal(place), {}, QPoint(0, 120 * notches), Qt::NoButton,
                    Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(&view, &event);
}

}  // namespace

class TestChartView : public QObject {
  Q_OBJECT

 private slots:
  void pointerReadsValues();
  void keysWalkOverPoints();
  void keysWalkOverANet();
  void wheelZoomsAboutThePointer();
  void framesZoom();
  void plansKeepTheirScale();
  void zoomStaysWithTheChart();
  void namedForThoseWhoDoNotSee();
  void menuIsThere();
  void manyChangesArePaintedOnce();
  void savesWhatItShows();
};

void TestChartView::pointerReadsValues() {
  ChartView view;
  show(view, tests::hingeChart());
  const QPointF place = view.layoutOfChart().place(20, 0.745);
  QTest::mouseMove(&view, place.toPoint());
  QTRY_VERIFY(view.reading().has_value());
  QVERIFY(view.reading()->lines.join(' ').contains("0.7450"));
  QEvent leave(QEvent::Leave);
  QApplication::sendEvent(&view, &leave);
  QVERIFY(!view.reading());
}

void TestChartView::keysWalkOverPoints() {
  ChartView view;
  show(view, tests::hingeChart());
  view.setFocus();
  QTest::keyClick(&view, Qt::Key_Right);
  QCOMPARE(view.reading()->point, 0U);
  QTest::keyClick(&view, Qt::Key_Right);
  QCOMPARE(view.reading()->point, 1U);
  QVERIFY(view.reading()->lines.contains("measured"));
  QTest::keyClick(&view, Qt::Key_Up);
  QVERIFY(view.reading()->lines.contains("left out"));
  QTest::keyClick(&view, Qt::Key_Up);
  QTest::keyClick(&view, Qt::Key_PageDown);
  QCOMPARE(view.reading()->series, 2U);
  QCOMPARE(view.reading()->point, 2U);
  QTest::keyClick(&view, Qt::Key_Escape);
  QVERIFY(!view.reading());
}

void TestChartView::keysWalkOverANet() {
  ChartView view;
  show(view, tests::planeMap());
  QTest::keyClick(&view, Qt::Key_Right);
  QTest::keyClick(&view, Qt::Key_Right);
  QTest::keyClick(&view, Qt::Key_Up);
  QCOMPARE(view.reading()->point, 6U);
  QVERIFY(view.reading()->lines.value(2).contains("0.0350"));  // 0.001·25 + 0.0005·20
}

void TestChartView::wheelZoomsAboutThePointer() {
  ChartView view;
  show(view, tests::hingeChart());
  const QPointF place = view.layoutOfChart().place(12, 0.9);
  turnWheel(view, place, 3);
  QVERIFY(view.zoom().has_value());
  const ChartLayout& layout = view.layoutOfChart();
  QVERIFY(view.zoom()->x.size() < 12);
  QVERIFY(std::abs(layout.x.value(place.x()) - 12) < 0.2);
  turnWheel(view, place, -5);
  QVERIFY(!view.zoom());
  turnWheel(view, place, 200);  // stops before the figures run out
  QVERIFY(view.layoutOfChart().view().x.size() > 1e-6);
}

void TestChartView::framesZoom() {
  ChartView view;
  show(view, tests::hingeChart());
  const QPoint from = view.layoutOfChart().place(10, 0.99).toPoint();
  const QPoint to = view.layoutOfChart().place(15, 0.8).toPoint();
  QTest::mousePress(&view, Qt::LeftButton, {}, from);
  QTest::mouseMove(&view, (from + to) / 2);
  QTest::mouseMove(&view, to);
  QTest::mouseRelease(&view, Qt::LeftButton, {}, to);
  QVERIFY(view.zoom().has_value());
  QVERIFY(std::abs(view.zoom()->x.from - 10) < 0.2 && std::abs(view.zoom()->x.to - 15) < 0.2);
  QVERIFY(std::abs(view.zoom()->y.from - 0.8) < 0.01 && std::abs(view.zoom()->y.to - 0.99) < 0.01);
  QTest::mouseDClick(&view, Qt::LeftButton, {}, from);
  QVERIFY(!view.zoom());
}

void TestChartView::plansKeepTheirScale() {
  ChartView view;
  show(view, tests::bedPlan());
  const QPoint from = view.layoutOfChart().place(100, 150).toPoint();
  const QPoint to = view.layoutOfChart().place(200, 100).toPoint();
  QTest::mousePress(&view, Qt::LeftButton, {}, from);
  QTest::mouseMove(&view, to);
  QTest::mouseRelease(&view, Qt::LeftButton, {}, to);
  const ChartLayout& layout = view.layoutOfChart();
  QVERIFY(view.zoom()->x.contains(105) && view.zoom()->x.contains(195));
  const double across = layout.x.place(150) - layout.x.place(140),
               down = layout.y.place(120) - layout.y.place(130);
  QVERIFY(std::abs(across / down - 1) < 0.02);
}

void TestChartView::zoomStaysWithTheChart() {
  ChartView view;
  show(view, tests::hingeChart());
  const View part{{10, 14}, {0.9, 1}};
  view.setZoom(part);
  Chart chart = tests::hingeChart();
  chart.series[0].y[0] = 0.98;
  view.setChart(chart);
  QCOMPARE(*view.zoom(), part);
  view.setChart(tests::bedPlan());
  QVERIFY(!view.zoom());
}

void TestChartView::namedForThoseWhoDoNotSee() {
  ChartView view;
  show(view, tests::hingeChart());
  QTRY_VERIFY(!view.accessibleDescription().isEmpty());
  QAccessibleInterface* const face = QAccessible::queryAccessibleInterface(&view);
  QCOMPARE(face->text(QAccessible::Name), QString("Delivered against flow"));
  QVERIFY(face->text(QAccessible::Description).contains("measured (5 points)"));
  view.activateWindow();
  QVERIFY(QTest::qWaitForWindowActive(&view));
  view.setFocus();
  QTest::keyClick(&view, Qt::Key_Right);
  QVERIFY(view.accessibleDescription().startsWith("measured, flow"));
  QCOMPARE(view.focusPolicy(), Qt::StrongFocus);
}

void TestChartView::menuIsThere() {
  ChartView view;
  show(view, tests::hingeChart());
  auto* const button = view.findChild<QToolButton*>("chartMenuButton");
  QVERIFY(button != nullptr && button->isEnabled() && !button->accessibleName().isEmpty());
  QCOMPARE(button->menu()->actions().size(), 6);
  QVERIFY(!view.layoutOfChart().plot.intersects(button->geometry()));
  view.setChart(tests::emptyChart());
  QVERIFY(!button->isEnabled());
}

void TestChartView::manyChangesArePaintedOnce() {
  class Counter : public QObject {
   public:
    int paints = 0;
    bool eventFilter(QObject*, QEvent* event) override {
      paints += event->type() == QEvent::Paint ? 1 : 0;
      return false;
    }
  } counter;
  ChartView view;
  show(view, tests::hingeChart());
  QTest::qWait(20);
  view.installEventFilter(&counter);
  Chart chart = tests::hingeChart();
  for (int i = 0; i < 50; ++i) {
    chart.series.front().y.front() += 0.001;
    view.setChart(chart);
  }
  QTRY_VERIFY(counter.paints > 0);
  QTest::qWait(50);  // time for a second paint, which must not come
  QCOMPARE(counter.paints, 1);
  view.setChart(chart);  // nothing new
  QTest::qWait(50);
  QCOMPARE(counter.paints, 1);
}

void TestChartView::savesWhatItShows() {
  ChartView view;
  show(view, tests::planeMap());
  const QTemporaryDir folder;
  QVERIFY(!view.saveAs(ChartFormat::png, folder.filePath("map.png")));
  QCOMPARE(QImage(folder.filePath("map.png")).size(), QSize(1120, 960));
  QVERIFY(view.saveAs(ChartFormat::png, folder.filePath("no/map.png")).has_value());
}

FETTLE_TEST(TestChartView)
#include "test_chart_view.moc"
