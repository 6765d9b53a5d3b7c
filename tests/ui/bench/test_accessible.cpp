#include <QAccessible>
#include <QTest>
#include <QtWidgets>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"
#include "tests/ui/bench/bench_window.h"
#include "ui/bench/main_window.h"

using namespace fettle;
using namespace fettle::ui;

/// What a screen reader is told: everything that can take the focus has a name, on every step; and that
/// each key does one thing.
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

  /// No key stands for two commands of the window, no letter for two entries of a menu.
  void keysAndLettersStandForOneCommand() {
    QMap<QString, QString> keys;
    for (const auto* action : m_window->findChildren<QAction*>()) {
      if (action->shortcutContext() == Qt::WidgetShortcut) {
        continue;  // of a table, shown in its menu
      }
      for (const auto& key : action->shortcuts()) {
        QVERIFY2(!keys.contains(key.toString()), qPrintable(keys[key.toString()] + ", " + action->text()));
        keys[key.toString()] = action->text();
      }
    }
    QVERIFY(keys.size() > 10);
    for (const auto* menu : m_window->findChildren<QMenu*>()) {
      QMap<QString, QString> letters;
      for (const auto* action : menu->actions()) {
        const QString letter = QKeySequence::mnemonic(action->text()).toString();
        QVERIFY2(letter.isEmpty() || !letters.contains(letter),
                 qPrintable(letters[letter] + ", " + action->text()));
        letters[letter] = action->text();
      }
    }
  }
};

FETTLE_TEST(TestAccessible)
#include "test_accessible.moc"
