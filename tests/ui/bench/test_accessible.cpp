#include <QAccessible>
#include <QTest>
#include <QtWidgets>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"
#include "tests/ui/bench/bench_window.h"
#include "ui/bench/main_window.h"

using namespace fettle;
using namespace fettle::ui;

/// What a screen reader is told: everything that can take the focus has a name, on every step.
class TestAccessible : public QObject {
  Q_OBJECT

  tests::ImportedMachine m_machine;
  std::unique_ptr<MainWindow> m_window;

  static QString nameOf(QWidget* widget) {
    QAccessibleInterface* told = QAccessible::queryAccessibleInterface(widget);
    return told ? told->text(QAccessible::Name) : QString();
  }

 private slots:
  void initTestCase() {
    m_window = tests::benchWindow(m_machine);
    QVERIFY(m_window);
  }
  void cleanupTestCase() { m_window.reset(); }

  void everythingThatTakesTheFocusHasAName_data() {
    QTest::addColumn<QString>("step");
    for (const auto& step : catalogue()) {
      QTest::newRow(step.key.c_str()) << QString::fromStdString(step.key);
    }
  }
  void everythingThatTakesTheFocusHasAName() {
    QFETCH(QString, step);
    m_window->chooseStep(step.toStdString());
    QCoreApplication::processEvents();
    int asked = 0;
    QStringList nameless;
    for (auto* widget : m_window->findChildren<QWidget*>()) {
      if (!widget->isVisible() || (widget->focusPolicy() & Qt::TabFocus) == 0) {
        continue;
      }
      ++asked;
      if (nameOf(widget).isEmpty()) {
        nameless << widget->metaObject()->className() + QStringLiteral(" ") + widget->objectName() +
                        " in " + widget->parentWidget()->objectName();
      }
    }
    QVERIFY2(nameless.isEmpty(), qPrintable(nameless.join("; ")));
    QVERIFY(asked > 5);
  }
};

FETTLE_TEST(TestAccessible)
#include "test_accessible.moc"
