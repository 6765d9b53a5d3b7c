#include <QTest>
#include <QtWidgets>
#include <algorithm>

#include "tests/support/test_main.h"
#include "tests/ui/bench/bench_window.h"
#include "ui/bench/main_window.h"
#include "ui/bench/step_page.h"
#include "ui/charts/chart_view.h"

using namespace fettle;
using namespace fettle::ui;

/// Where the keys go is what is seen, in the order of the work; a real window with the demo machine.
class TestFocus : public QObject {
  Q_OBJECT

  tests::ImportedMachine m_machine;
  std::unique_ptr<MainWindow> m_window;

  StepPage& page() { return m_window->page(); }

  static void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    QTest::qWait(1);
  }
  static void type(const QString& text) {
    for (const QChar c : text) {
      QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    }
  }
  bool isSeen(const QWidget* part, const QRect& place) {
    const QRect seen(page().viewport()->mapToGlobal(QPoint()), page().viewport()->size());
    return part->isVisible() && seen.contains(QRect(part->mapToGlobal(place.topLeft()), place.size()));
  }
  bool isSeen(const QWidget* part) { return isSeen(part, part->rect()); }
  void begin(const char* step) {
    m_window->chooseStep(step);
    page().startRun();
    QTest::qWait(20);
  }
  QTableView* goTo(const char* table, int row, int column) {
    auto* view = page().findChild<QTableView*>(table);
    view->setFocus();
    view->setCurrentIndex(view->model()->index(row, column));
    return view;
  }

 private slots:
  void initTestCase() {
    m_window = tests::benchWindow(m_machine);
    QVERIFY(m_window);
  }
  void cleanupTestCase() { m_window.reset(); }

  void thePageFollowsTheCellAndTheRefusal() {
    begin("mechanics");
    QTableView* view = goTo("diagonalsTableView", 0, 1);
    QTRY_VERIFY(isSeen(view->viewport(), view->visualRect(view->currentIndex())));
    auto* problem = page().findChild<QLabel*>("diagonalsProblem");
    page().verticalScrollBar()->setValue(0);
    type("x5");
    press(Qt::Key_Return);
    QTRY_VERIFY(isSeen(problem));
    type("500");
    press(Qt::Key_Return);
    QTRY_VERIFY(isSeen(view->viewport(), view->visualRect(view->currentIndex())));
  }

  void aChecklistRowIsFollowed() {
    begin("mechanics");
    auto* checks = page().findChild<QTableView*>("checksTableView");
    QCOMPARE(QApplication::focusWidget(), checks);
    page().verticalScrollBar()->setValue(page().verticalScrollBar()->maximum());
    press(Qt::Key_Space);
    QTRY_VERIFY(isSeen(checks->viewport(), checks->visualRect(checks->currentIndex())));
  }

  void pageKeysScrollAndTheFirstEntryComesBack() {
    begin("melt-rate");
    auto* bar = page().verticalScrollBar();
    QWidget* first = QApplication::focusWidget();
    press(Qt::Key_PageDown);
    QVERIFY(bar->value() > 0 && !isSeen(first));
    press(Qt::Key_E, Qt::ControlModifier);
    QTRY_VERIFY(isSeen(first));
    QCOMPARE(QApplication::focusWidget(), first);
  }

  void firstEntryFromInsideATable() {
    begin("temperature-sensor");
    QWidget* first = QApplication::focusWidget();
    auto* view = page().form().findChildren<QTableView*>().front();
    view->setFocus();
    press(Qt::Key_E, Qt::ControlModifier);
    QCOMPARE(QApplication::focusWidget(), first);
  }

  void tabGoesThroughTheWorkInOrder() {
    const Document& document = *m_window->document();
    const auto& all = document.history().runs;
    const auto today = std::find_if(all.begin(), all.end(), [&](const StepRun& run) {
      return run.session == document.session() && run.accepted();
    });
    QVERIFY(today != all.end());
    m_window->chooseStep(today->step);
    page().chooseRun(today->id);
    QTest::qWait(20);
    press(Qt::Key_E, Qt::ControlModifier);
    QStringList order;
    while (order.size() < 60 && !qobject_cast<ChartView*>(QApplication::focusWidget())) {
      order << QApplication::focusWidget()->objectName();
      press(Qt::Key_Tab);
    }
    const auto notes = order.indexOf("notesEditor"), runs = order.indexOf("runBox");
    const auto accept = order.indexOf("acceptButton");
    QVERIFY2(accept > 0 && notes > accept && runs > notes, qPrintable(order.join(' ')));
    QVERIFY2(order.size() < 60, "the chart comes last");
    const auto menu = std::find_if(order.begin(), order.end(),
                                   [](const QString& name) { return name.endsWith("MenuButton"); });
    QVERIFY2(menu == order.end() || menu - order.begin() > notes, "menus do not stand before acceptance");
  }

  void acceptingTooEarlyGoesToWhatIsMissing() {
    begin("belt-tension");
    type("300");
    press(Qt::Key_Return);
    press(Qt::Key_Return, Qt::ControlModifier);
    QVERIFY(!page().run()->accepted());
    // Only the tension needs the mass; all results need plucks.
    QTRY_COMPARE(QApplication::focusWidget()->objectName(), QString("plucksTableView"));
  }

  void enterPressesAFocusedButton() {
    m_window->chooseStep("melt-rate");
    QTest::qWait(20);
    const auto before = m_window->document()->history().runs.size();
    page().findChild<QPushButton*>("newRunButton")->setFocus();
    press(Qt::Key_Return);
    QCOMPARE(m_window->document()->history().runs.size(), before + 1);
  }

  void adoptingKeepsTheKeyboard() {
    m_window->chooseStep("melt-rate");
    QTest::qWait(50);
    const auto& runs = m_window->document()->history().runs;
    const auto complete = std::find_if(runs.rbegin(), runs.rend(), [&](const StepRun& run) {
      return run.step == "melt-rate" && run.session == m_window->document()->session() &&
             m_window->document()->history().evaluated.at(run.id).result.complete;
    });
    QVERIFY(complete != runs.rend());
    page().chooseRun(complete->id);
    QTest::qWait(50);
    const QRegularExpression either("^(adopt|takeBack)_");
    const auto buttons = page().findChildren<QPushButton*>(either);
    QVERIFY(!buttons.isEmpty());
    const QString before = buttons.front()->objectName();
    const QString after = (before.startsWith("adopt_") ? "takeBack_" : "adopt_") + before.section('_', 1);
    buttons.front()->setFocus();
    press(Qt::Key_Space);
    QTRY_VERIFY(page().findChild<QPushButton*>(after));
    QTRY_VERIFY(QApplication::focusWidget());
    QTRY_COMPARE(QApplication::focusWidget()->objectName(), after);
  }

  void runsAreWalkedByKeys() {
    begin("melt-rate");
    const RecordId last = page().run()->id;
    press(Qt::Key_PageUp, Qt::AltModifier);
    QVERIFY(page().run()->id < last);
    press(Qt::Key_PageDown, Qt::AltModifier);
    QCOMPARE(page().run()->id, last);
  }
};

FETTLE_TEST(TestFocus)
#include "test_focus.moc"
