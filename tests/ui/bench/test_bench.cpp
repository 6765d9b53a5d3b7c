#include <QApplication>
#include <QLabel>
#include <QRegularExpression>
#include <QTableView>
#include <QTest>
#include <QUndoStack>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"
#include "tests/ui/bench/bench_window.h"
#include "ui/bench/main_window.h"
#include "ui/bench/step_page.h"

using namespace fettle;
using namespace fettle::ui;

/// The bench as a person uses it: real window, real keys, a real file made from the demo.
class TestBench : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase() {
    m_window = tests::benchWindow(m_machine);
    QVERIFY(m_window);
  }

  void cleanupTestCase() { m_window.reset(); }

  void everyStepOpensAndNothingIsNotANumber() {
    for (const auto& step : catalogue()) {
      m_window->chooseStep(step.key);
      QCOMPARE(m_window->page().step()->key, step.key);
      QTest::qWait(20);
      for (const auto* label : m_window->findChildren<QLabel*>()) {
        static const QRegularExpression notANumber("\\b(nan|inf)\\b",
                                                   QRegularExpression::CaseInsensitiveOption);
        QVERIFY2(!label->text().contains(notANumber), qPrintable(label->text()));
      }
    }
  }

  void typingMassesComputesAndUndoTakesThemBack() {
    m_window->chooseStep("melt-rate");
    Document& document = *m_window->document();
    const int before = document.undoStack().index();
    QVERIFY(document.addRun("melt-rate", ""));
    m_window->page().chooseRun(document.history().runs.back().id);
    auto* table = m_window->page().findChild<QTableView*>("stepsTableView");
    QVERIFY(table);
    table->setFocus();
    table->setCurrentIndex(table->model()->index(0, 0));
    QTest::keyClicks(table, "5");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    const StepRun* run = document.history().run(m_window->page().run()->id);
    QVERIFY(run->inputs.contains("steps"));
    QCOMPARE(run->inputs["steps"][0]["flow_mm3_s"].get<double>(), 5.0);
    while (document.undoStack().index() > before) {
      document.undoStack().undo();
    }
    QCOMPARE(document.undoStack().index(), before);
  }

  void anotherWindowOpensReadOnly() {
    MainWindow second(Palette::light());
    QVERIFY(second.openFile(m_machine.file()));
    QVERIFY(!second.document()->editable());
    QVERIFY(!second.document()->setNotes("melt-rate", 0, "no"));
  }

 private:
  tests::ImportedMachine m_machine;
  std::unique_ptr<MainWindow> m_window;
};

FETTLE_TEST(TestBench)
#include "test_bench.moc"
