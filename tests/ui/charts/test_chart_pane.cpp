#include "ui/charts/chart_pane.h"

#include <QTabBar>
#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/charts/chart_view.h"

using namespace fettle;
using namespace fettle::ui;

class TestChartPane : public QObject {
  Q_OBJECT

 private slots:
  void oneTabForEachChart();
  void choiceIsRemembered();
  void clicksChoose();
  void noCharts();
};

void TestChartPane::oneTabForEachChart() {
  ChartPane pane;
  pane.setCharts({tests::hingeChart(), tests::bedPlan(), tests::emptyChart()});
  auto* const tabs = pane.findChild<QTabBar*>("chartTabBar");
  QCOMPARE(tabs->count(), 3);
  QCOMPARE(tabs->tabText(1), QString("Plan of the bed"));
  QCOMPARE(pane.chosen(), QString("hinge"));
  QCOMPARE(pane.view()->chart().title, std::string("Delivered against flow"));
  pane.setCharts({tests::planeMap()});
  QCOMPARE(tabs->count(), 1);
  QCOMPARE(tabs->tabText(0), QString("Heights"));
  QVERIFY(!tabs->accessibleName().isEmpty());
}

// By id: other charts in between and another order do not matter.
void TestChartPane::choiceIsRemembered() {
  ChartPane pane;
  pane.setCharts({tests::hingeChart(), tests::bedPlan()});
  pane.choose("plan");
  pane.setCharts({tests::planeMap()});
  QCOMPARE(pane.chosen(), QString("map"));
  pane.setCharts({tests::bedPlan(), tests::hingeChart(), tests::planeMap()});
  QCOMPARE(pane.chosen(), QString("plan"));
  pane.choose("map");
  pane.setCharts({tests::hingeChart(), tests::bedPlan(), tests::planeMap()});
  QCOMPARE(pane.chosen(), QString("map"));
  QCOMPARE(pane.view()->chart().view, std::string("map"));
}

void TestChartPane::clicksChoose() {
  ChartPane pane;
  pane.resize(560, 480);
  pane.setCharts({tests::hingeChart(), tests::bedPlan()});
  pane.show();
  auto* const tabs = pane.findChild<QTabBar*>("chartTabBar");
  QTest::mouseClick(tabs, Qt::LeftButton, {}, tabs->tabRect(1).center());
  QCOMPARE(pane.view()->chart().view, std::string("plan"));
}

void TestChartPane::noCharts() {
  ChartPane pane;
  pane.setCharts({tests::hingeChart()});
  pane.setCharts({});
  QVERIFY(pane.chosen().isEmpty());
  QVERIFY(pane.view()->chart().isEmpty());
  pane.choose("plan");
}

FETTLE_TEST(TestChartPane)
#include "test_chart_pane.moc"
