#include <QAction>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QSettings>
#include <QToolButton>

#include "tests/support/test_main.h"
#include "tests/ui/forms/form_owner.h"
#include "tests/ui/forms/table_fields.h"
#include "ui/forms/intake_dialog.h"
#include "ui/forms/table_editor.h"
#include "ui/forms/table_menu.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

/// Changes of whole rows and of several cells: deleting, pasting, leaving out, and what the menu offers.
class TestTableChanges : public QObject {
  Q_OBJECT
 private slots:
  void init() { QSettings().clear(); }

  void deleteClearsInsertAndRemove() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    QTableView* view = owner.goTo("marksTableView", 0, xColumn);
    view->selectionModel()->select(
        QItemSelection(view->model()->index(0, xColumn), view->model()->index(1, yColumn)),
        QItemSelectionModel::ClearAndSelect);
    press(Qt::Key_Delete);
    QCOMPARE(owner.inputs["marks"], (Json{Json::object(), Json::object(), threeMarks[2]}));
    QCOMPARE(owner.edits.back().what, QString("clear cells in rows 1, 2"));
    press(Qt::Key_Delete, Qt::ControlModifier);
    QCOMPARE(owner.inputs["marks"], Json{threeMarks[2]});
    owner.goTo("marksTableView", 0, xColumn);
    press(Qt::Key_Insert);
    QCOMPARE(owner.inputs["marks"], (Json{Json::object(), threeMarks[2]}));
    QCOMPARE(owner.edits.back().what, QString("insert row 1"));
  }

  void pasteIsOneEdit() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    owner.goTo("marksTableView", 2, xColumn);
    putOnClipboard("7,5\t8\n9\t10\n11\t12\n");
    press(Qt::Key_V, Qt::ControlModifier);
    QCOMPARE(owner.edits.size(), 1U);
    QCOMPARE(owner.inputs["marks"].size(), 5U);
    QCOMPARE(owner.inputs["marks"][2], (Json{{"x", 7.5}, {"y", 8.0}}));
    QCOMPARE(owner.edits[0].what, QString("paste into rows 3 to 5"));
  }

  void linesWithAHeadingGoThroughThePreview() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.goTo("marksTableView", 0, xColumn);
    putOnClipboard("y\tx\n7\t8\n9\t10\n");
    press(Qt::Key_V, Qt::ControlModifier);
    auto* dialog = owner.form.findChild<IntakeDialog*>();
    QVERIFY(dialog);
    auto* takeIn = dialog->findChild<QPushButton*>("takeInButton");
    QTRY_VERIFY(takeIn->isEnabled());
    takeIn->click();
    QCOMPARE(owner.inputs["marks"], (Json{{{"x", 8.0}, {"y", 7.0}}, {{"x", 10.0}, {"y", 9.0}}}));
  }

  void pasteIsRefusedWithASentence() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    owner.goTo("marksTableView", 0, xColumn);
    putOnClipboard("7\t8\n9\tten\n");
    press(Qt::Key_V, Qt::ControlModifier);
    QVERIFY(owner.edits.empty());
    const QString sentence = owner.find<QLabel>("marksProblem")->text();
    QVERIFY2(sentence.startsWith("Nothing was pasted: row 2, probe y: \"ten\""), qPrintable(sentence));
  }

  void copyGivesASpreadsheet() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", Json{{{"x", -1.5}, {"y", 2.0}}, {{"x", 3.0}}}}});
    QTableView* view = owner.goTo("marksTableView", 0, xColumn);
    view->selectionModel()->select(
        QItemSelection(view->model()->index(0, xColumn), view->model()->index(1, yColumn)),
        QItemSelectionModel::ClearAndSelect);
    press(Qt::Key_C, Qt::ControlModifier);
    QCOMPARE(QApplication::clipboard()->text(), QString("-1.5\t2\n3\t"));
  }

  void rowsAreLeftOutForAReason() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    QTableView* view = owner.goTo("marksTableView", 1, xColumn);
    press(Qt::Key_D, Qt::ControlModifier);
    QCOMPARE(QApplication::focusWidget()->objectName(), QString("reasonLineEdit"));
    const int wide = owner.table("marksTableView")->width();
    QVERIFY2(QApplication::focusWidget()->width() > wide * 9 / 10, "a reason is a sentence");
    type("bumped the table\n");
    QCOMPARE(owner.inputs["marks"][1]["excluded"], Json("bumped the table"));
    QCOMPARE(owner.edits.size(), 1U);
    QCOMPARE(owner.edits[0].what, QString("exclude row 2"));
    QCOMPARE(QApplication::focusWidget(), view);
    const auto spoken = view->model()->index(1, xColumn).data(Qt::AccessibleTextRole).toString();
    QVERIFY2(spoken.endsWith("left out: bumped the table"), qPrintable(spoken));
    press(Qt::Key_D, Qt::ControlModifier);
    QCOMPARE(owner.inputs["marks"], threeMarks);
    QCOMPARE(owner.edits[1].what, QString("include row 2"));
  }

  void reasonIsNeededAndEscapeCancels() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    QTableView* view = owner.goTo("marksTableView", 1, xColumn);
    press(Qt::Key_D, Qt::ControlModifier);
    type("  \n");
    QCOMPARE(QApplication::focusWidget()->objectName(), QString("reasonLineEdit"));
    press(Qt::Key_Escape);
    QVERIFY(owner.edits.empty());
    QCOMPARE(QApplication::focusWidget(), view);
  }

  void instrumentsAreChosenPerColumn() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.form.setInstruments(
        {instruments::caliper(), instruments::micrometer(), instruments::pocketScale()});
    auto* button = owner.find<QToolButton>("xInstrumentButton");
    QCOMPARE(button->text(), QString("probe x, probe y: caliper ▾"));
    const auto actions = button->menu()->actions();
    QCOMPARE(actions.size(), 2);  // no scale weighs millimetres
    actions[1]->trigger();
    const Json micrometer{{"name", "micrometer"}, {"r", 0.001}, {"e", 0.004}};
    QCOMPARE(owner.edits[0].path, QString("instruments"));
    QCOMPARE(owner.edits[0].what, QString("instrument of probe x, probe y"));
    QCOMPARE(owner.inputs["instruments"], (Json{{"x", micrometer}, {"y", micrometer}}));
    QMenu menu;
    fillTableMenu(menu, *owner.find<TableEditor>("marksTableEditor"), yColumn);
    QMenu* part = nullptr;
    for (QAction* action : menu.actions()) {
      part = action->text() == "probe y is read with" ? action->menu() : part;
    }
    QVERIFY(part != nullptr);
    part->actions()[0]->trigger();
    QCOMPARE(owner.inputs["instruments"], (Json{{"x", micrometer}}));  // y as described again
  }

  void menuDoesWhatKeysDo() {
    FormOwner owner(fieldsOf<TableInputs>());
    owner.show({{"marks", threeMarks}});
    owner.goTo("marksTableView", 1, xColumn);
    QMenu menu;
    fillTableMenu(menu, *owner.find<TableEditor>("marksTableEditor"), -1);
    for (QAction* action : menu.actions()) {
      if (action->text() == "Remove rows") {
        action->trigger();
      }
    }
    QCOMPARE(owner.inputs["marks"], (Json{threeMarks[0], threeMarks[2]}));
  }
};

FETTLE_TEST(TestTableChanges)
#include "test_table_changes.moc"
