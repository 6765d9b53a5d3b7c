#include <QTemporaryDir>
#include <QTest>
#include <QtWidgets>

#include "tests/support/test_main.h"
#include "ui/bench/session_dialog.h"
#include "ui/bench/settings_page.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// The session dialog and the page of what to enter, by their keys.
class TestDialogs : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;

  static void show(QWidget& dialog) {
    dialog.show();
    QApplication::setActiveWindow(&dialog);
    QVERIFY(QTest::qWaitForWindowActive(&dialog));
  }
  static void press(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }

  /// A session that adopted a value with U, one without, and one of a heater.
  std::unique_ptr<Document> adopted() {
    History history;
    history.machine.sheet["name"] = "Rig";
    history.sessions.push_back({2, "2026-03-02T09:00:00", "A B", "", "", std::nullopt, 0});
    StepRun run{3, 2, "melt-rate", "", Json::object(), "", "", {}};
    run.adopted = {{"x.steps_per_mm", {79.97613, ""}, "1/mm", 0.007, 0.0142, "2026-03-02T10:00:00"},
                   {"flow_limit", {11.20924, ""}, "mm3/s", {}, {}, "2026-03-02T10:00:00"},
                   {"hot_end.Ki", {0.0003266, ""}, "1", {}, {}, "2026-03-02T10:00:00"}};
    history.runs.push_back(run);
    auto file = MachineFile::create(m_folder.filePath("a.fettle").toStdString(), history);
    return file ? std::make_unique<Document>(std::move(*file)) : nullptr;
  }

 private slots:
  void initTestCase() { applyLook(*qApp, Look::light); }

  void enterGoesToTheNextEntry() {
    Session before;
    before.person = "M. Orr";
    SessionDialog dialog(before, "New session");
    show(dialog);
    QTest::keyClicks(QApplication::focusWidget(), "Tester");  // over the name that was there
    press(Qt::Key_Return);
    QVERIFY(dialog.isVisible());
    QTest::keyClicks(QApplication::focusWidget(), "yearly check");
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    QTest::keyClicks(QApplication::focusWidget(), "many such");
    const auto* problem = dialog.findChild<QLabel*>("sessionProblem");
    QVERIFY(problem->isVisible());
    QVERIFY(problem->height() >= problem->heightForWidth(problem->width()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    press(Qt::Key_Delete);
    press(Qt::Key_Return);
    press(Qt::Key_Return);  // on OK
    QCOMPARE(dialog.result(), int(QDialog::Accepted));
    QCOMPARE(dialog.session().person, std::string("Tester"));
    QCOMPARE(dialog.session().reason, std::string("yearly check"));
  }

  void tabLeavesTheTableOfSettings() {
    const auto document = adopted();
    QVERIFY(document);
    SettingsPage page(*document);
    show(page);
    auto* table = page.findChild<QTableWidget*>("settingsTable");
    table->setFocus();
    press(Qt::Key_Tab);
    auto* button = qobject_cast<QPushButton*>(QApplication::focusWidget());
    QVERIFY(button);
    page.findChild<QPushButton*>("copyTextButton")->setFocus();
    press(Qt::Key_Return);
    const QString text = QApplication::clipboard()->text();
    // Two digits of U, or five where there is none.
    QVERIFY2(text.contains("\t79.976 ± 0.014 steps/mm\n"), qPrintable(text));
    QVERIFY2(text.contains("\t11.209 "), qPrintable(text));
    QVERIFY2(text.contains("\t0.0003266"), qPrintable(text));
    QVERIFY2(!text.contains('_'), qPrintable(text));
    QVERIFY(table->item(0, 5)->text().startsWith("Melt rate, 2 Mar 2026"));
  }
};

FETTLE_TEST(TestDialogs)
#include "test_dialogs.moc"
