#include <QAccessible>
#include <QProcess>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QtWidgets>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"
#include "ui/bench/main_window.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// What a screen reader is told: everything that can take the focus has a name, on every step.
class TestAccessible : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;
  std::unique_ptr<MainWindow> m_window;

  static QString nameOf(QWidget* widget) {
    QAccessibleInterface* told = QAccessible::queryAccessibleInterface(widget);
    return told ? told->text(QAccessible::Name) : QString();
  }

 private slots:
  void initTestCase() {
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, m_folder.path());
    QCOMPARE(
        QProcess::execute(FETTLE_BATCH, {"import", FETTLE_SOURCE_DIR "/demo-sessions/wagtail/wagtail.json",
                                         m_folder.filePath("demo.fettle")}),
        0);
    m_window = std::make_unique<MainWindow>(applyLook(*qApp, Look::light));
    QVERIFY(m_window->openFile(m_folder.filePath("demo.fettle")));
    m_window->show();
    QVERIFY(QTest::qWaitForWindowExposed(m_window.get()));
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
