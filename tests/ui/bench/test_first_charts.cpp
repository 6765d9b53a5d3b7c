#include <QApplication>
#include <QTabBar>
#include <QTest>

#include "tests/support/imported_machine.h"
#include "tests/support/test_main.h"
#include "ui/bench/main_window.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// What the program shows of charts right after its start, before any step was changed.
class TestFirstCharts : public QObject {
  Q_OBJECT

 private slots:
  void firstTabsAreInSight_data() {
    QTest::addColumn<QString>("step");
    for (const char* step : {"", "axis-travel", "resonance", "bed-shape"}) {
      QTest::newRow(*step ? step : "plain start") << QString(step);
    }
  }

  void firstTabsAreInSight() {
    QFETCH(QString, step);
    MainWindow window(applyLook(*qApp, Look::light));
    QVERIFY(m_machine.isMade() && window.openFile(m_machine.file()));
    if (!step.isEmpty()) {
      window.chooseStep(step.toStdString());
    }
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    QApplication::processEvents();
    const auto* tabs = window.findChild<QTabBar*>("chartTabBar");
    QVERIFY(tabs->count() > 1);
    for (int i = 0; i < 2; ++i) {  // further ones may need the scroll buttons
      QVERIFY2(tabs->rect().contains(tabs->tabRect(i).center()), qPrintable(tabs->tabText(i)));
    }
  }

 private:
  tests::ImportedMachine m_machine;
};

FETTLE_TEST(TestFirstCharts)
#include "test_first_charts.moc"
