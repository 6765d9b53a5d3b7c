#include <QAction>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QMimeData>
#include <QPushButton>
#include <QScrollBar>
#include <QSettings>
#include <QToolButton>

#include "tests/support/test_main.h"
#include "tests/ui/forms/form_owner.h"
#include "ui/forms/cell_view.h"
#include "ui/forms/table_editor.h"
#include "ui/forms/table_menu.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

// What is expected here is the project's own way of entry: a caliper that types a value and Enter fills
// cells in order; every change is one edit of the whole table with words for the undo menu.
namespace {

struct MarkRow : TableRow {
  std::optional<double> x, y;
  std::string kind;
  std::optional<double> from;
  std::optional<bool> ok;
  std::string remark;
  void describe(FieldList& fields) {
    fields.number("x", x, "probe x", "mm").required().bounds(-500, 500).readWith(instruments::caliper());
    fields.number("y", y, "probe y", "mm").required().readWith(instruments::caliper());
    fields.choice("kind", kind, "kind", {{"tap", "tap"}, {"sweep", "sweep"}, {"run", "run"}});
    fields.number("from", from, "sweep from", "Hz").atLeast(0).onlyWhen("kind", {"sweep"});
    fields.yesNo("ok", ok, "ok");
    fields.text("remark", remark, "remark");
  }
};

struct MassRow : TableRow {
  std::optional<double> mass;
  void describe(FieldList& fields) { fields.number("mass", mass, "mass", "g").required(); }
};

struct FileRow : TableRow {
  std::string axis;
  CapturePointer capture;
  void describe(FieldList& fields) {
    fields.choice("axis", axis, "axis", {{"x", "x"}, {"y", "y"}});
    fields.capture("capture", capture, "capture",
                   [](FieldList& columns) { columns.column("time_s", "time", "s").required(); });
  }
};

struct TableInputs {
  std::vector<MarkRow> marks;
  std::vector<MassRow> masses;
  std::vector<FileRow> captures;
  double margin = 5;
  void describe(FieldList& fields) {
    fields.table("marks", marks, "marks");
    fields.table("masses", masses, "masses");
    fields.table("captures", captures, "captures");
    fields.number("margin", margin, "margin", "mm");
  }
};

std::vector<Field> fieldsOfTable() {
  TableInputs inputs;
  FieldList list;
  inputs.describe(list);
  return list.fields();
}

const Json threeMarks = {{{"x", 1.5}, {"y", 2.0}}, {{"x", 3.0}, {"y", 4.0}}, {{"x", 5.0}, {"y", 6.0}}};

Json masses(int count) {
  Json rows = Json::array();
  for (int i = 0; i < count; ++i) {
    rows.push_back({{"mass", i + 1.0}});
  }
  return rows;
}

enum Column { xColumn, yColumn, kindColumn, fromColumn, okColumn, remarkColumn };

}  // namespace

class TestTableEditor : public QObject {
  Q_OBJECT
 private slots:
  void init() { QSettings().clear(); }

  void caliperFillsCellsInOrder_data();
  void caliperFillsCellsInOrder();
  void oneColumnIsEnteredDownwards();
  void enterMayGoDown();
  void tabLeavesTheTable();
  void pageKeysAreLeftToThePage();
  void editsHaveWords();
  void ownerWhoAnswersLaterLosesNothing();
  void escapeRestoresTheCell();
  void wrongTextKeepsTheCellOpen();
  void leavingWithWrongTextKeepsTheOldValue();
  void equalValueTellsNothing();
  void answersByOneKey();
  void conditionShowsColumnsAndSkipsCells();
  void deleteClearsInsertAndRemove();
  void pasteIsOneEdit();
  void pasteIsRefusedWithASentence();
  void copyGivesASpreadsheet();
  void rowsAreLeftOutForAReason();
  void reasonIsNeededAndEscapeCancels();
  void readOnlyTakesNothing();
  void setValuesKeepsCellEditorAndScroll();
  void decimalPointsStandUnderEachOther();
  void blankColumnsCanBeHidden();
  void filesAreToldNotRead();
  void rowsFromAFileCanBeTypedInstead();
  void heightFollowsRowsUpToALimit();
  void instrumentsAreChosenPerColumn();
  void menuDoesWhatKeysDo();
};

void TestTableEditor::caliperFillsCellsInOrder_data() {
  QTest::addColumn<QLocale>("locale");
  QTest::addColumn<QString>("typed");
  QTest::addRow("C, point") << QLocale::c() << "12.50\n3.25\n";
  QTest::addRow("C, comma") << QLocale::c() << "12,50\n3,25\n";
  QTest::addRow("German, point") << QLocale(QLocale::German) << "12.50\n3.25\n";
  QTest::addRow("German, comma") << QLocale(QLocale::German) << "12,50\n3,25\n";
}

void TestTableEditor::caliperFillsCellsInOrder() {
  QFETCH(QLocale, locale);
  QFETCH(QString, typed);
  QLocale::setDefault(locale);
  FormOwner owner(fieldsOfTable());
  QTableView* view = owner.goTo("marksTableView", 0, xColumn);
  type(typed);
  press(Qt::Key_Return);  // over kind, ok and remark to the next row
  press(Qt::Key_Return);
  press(Qt::Key_Return);
  QCOMPARE(view->currentIndex(), view->model()->index(1, xColumn));
  type(typed);
  QCOMPARE(owner.inputs["marks"], (Json{{{"x", 12.5}, {"y", 3.25}}, {{"x", 12.5}, {"y", 3.25}}}));
  QCOMPARE(owner.edits.size(), 4U);
  QCOMPARE(view->model()->rowCount(), 3);  // always a blank one
  QLocale::setDefault(QLocale::c());
}

void TestTableEditor::oneColumnIsEnteredDownwards() {
  FormOwner owner(fieldsOfTable());
  QTableView* view = owner.goTo("massesTableView", 0, 0);
  type("1\n2\n3\n4\n");
  QCOMPARE(owner.inputs["masses"], masses(4));
  QCOMPARE(view->currentIndex().row(), 4);
  QCOMPARE(QApplication::focusWidget(), view);
}

void TestTableEditor::enterMayGoDown() {
  FormOwner owner(fieldsOfTable());
  auto* editor = owner.find<TableEditor>("marksTableEditor");
  TableMemory memory = editor->memory();
  memory.enter = CellView::Direction::down;
  editor->remember(memory);
  owner.goTo("marksTableView", 0, yColumn);
  type("1\n2\n3\n");
  QCOMPARE(owner.inputs["marks"], (Json{{{"y", 1.0}}, {{"y", 2.0}}, {{"y", 3.0}}}));
  FormOwner later(fieldsOfTable());
  QCOMPARE(later.find<TableEditor>("marksTableEditor")->memory().enter, CellView::Direction::down);
}

void TestTableEditor::tabLeavesTheTable() {
  FormOwner owner(fieldsOfTable());
  QTableView* view = owner.goTo("massesTableView", 0, 0);
  type("1\t");
  QCOMPARE(owner.inputs["masses"], masses(1));
  QCOMPARE(QApplication::focusWidget(), owner.table("capturesTableView"));
  press(Qt::Key_Backtab);
  QCOMPARE(QApplication::focusWidget(), view);
  press(Qt::Key_Backtab);
  QCOMPARE(QApplication::focusWidget(), owner.table("marksTableView"));
}

void TestTableEditor::pageKeysAreLeftToThePage() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"masses", masses(60)}});
  QTableView* view = owner.goTo("massesTableView", 3, 0);
  for (const Qt::Key key : {Qt::Key_PageDown, Qt::Key_PageUp}) {
    QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier);
    QApplication::sendEvent(view, &event);
    QVERIFY(!event.isAccepted());
  }
  QCOMPARE(view->currentIndex().row(), 3);
}

void TestTableEditor::editsHaveWords() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 2, xColumn);
  type("7\n");
  QCOMPARE(owner.edits[0].path, QString("marks"));
  QCOMPARE(owner.edits[0].what, QString("row 3, probe x"));
}

void TestTableEditor::ownerWhoAnswersLaterLosesNothing() {
  InputForm form;
  Json last;
  connect(&form, &InputForm::edited, this,
          [&](const QString&, const Json& value, const QString&) { last = value; });
  form.setFields(fieldsOfTable());
  form.show();
  QVERIFY(QTest::qWaitForWindowActive(&form));
  auto* view = form.findChild<QTableView*>("massesTableView");
  view->setFocus();
  view->setCurrentIndex(view->model()->index(0, 0));
  type("1\n2\n3\n");
  QCOMPARE(last, masses(3));
}

void TestTableEditor::escapeRestoresTheCell() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  QTableView* view = owner.goTo("marksTableView", 1, xColumn);
  type("99x");
  QVERIFY(!owner.find<QLabel>("marksProblem")->isHidden());
  press(Qt::Key_Escape);
  QCOMPARE(FormOwner::shown(view, 1, xColumn), QString("3.00"));
  QVERIFY(owner.find<QLabel>("marksProblem")->isHidden());
  QVERIFY(owner.edits.empty());
  QCOMPARE(QApplication::focusWidget(), view);
}

void TestTableEditor::wrongTextKeepsTheCellOpen() {
  FormOwner owner(fieldsOfTable());
  QTableView* view = owner.goTo("marksTableView", 0, xColumn);
  type("900\n");
  QCOMPARE(view->currentIndex().column(), 0);
  QCOMPARE(owner.find<QLabel>("marksProblem")->text(),
           QString("probe x: 900 is not possible; a number from \u2212500 to 500 in mm is needed."));
  type("90");  // replaces what was refused
  QVERIFY(owner.find<QLabel>("marksProblem")->isHidden());
  press(Qt::Key_Return);
  QCOMPARE(owner.inputs["marks"], (Json{{{"x", 90.0}}}));
}

void TestTableEditor::leavingWithWrongTextKeepsTheOldValue() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 0, xColumn);
  type("1,5,2");
  owner.line("marginLineEdit")->setFocus(Qt::MouseFocusReason);
  QVERIFY(owner.edits.empty());
  QVERIFY(owner.find<QLabel>("marksProblem")->text().endsWith("The cell keeps 1.5."));
}

void TestTableEditor::equalValueTellsNothing() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 0, xColumn);
  type("1,50\n");
  press(Qt::Key_Delete);
  press(Qt::Key_F2);
  type("2\n");
  QCOMPARE(owner.edits.size(), 2U);  // cleared, typed
  owner.goTo("marksTableView", 3, xColumn);
  press(Qt::Key_Delete);
  press(Qt::Key_Delete, Qt::ControlModifier);
  QCOMPARE(owner.edits.size(), 2U);
}

void TestTableEditor::answersByOneKey() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  QTableView* view = owner.goTo("marksTableView", 0, kindColumn);
  type("s");
  QCOMPARE(owner.inputs["marks"][0]["kind"], Json("sweep"));
  press(Qt::Key_Right);
  press(Qt::Key_Left);
  type("r");
  QCOMPARE(owner.inputs["marks"][0]["kind"], Json("run"));
  type("z");
  QCOMPARE(owner.inputs["marks"][0]["kind"], Json("sweep"));
  QCOMPARE(owner.find<QLabel>("marksProblem")->text(), QString("kind: no choice begins with \"rz\"."));
  press(Qt::Key_Delete);
  QVERIFY(!owner.inputs["marks"][0].contains("kind"));
  view->setCurrentIndex(view->model()->index(0, okColumn));
  type(" ");
  QCOMPARE(owner.inputs["marks"][0]["ok"], Json(true));
  QCOMPARE(FormOwner::shown(view, 0, okColumn), QString("yes"));
  type(" ");
  QCOMPARE(owner.inputs["marks"][0]["ok"], Json(false));
  type(" ");
  QVERIFY(!owner.inputs["marks"][0].contains("ok"));
  type("n");
  QCOMPARE(owner.inputs["marks"][0]["ok"], Json(false));
  view->setCurrentIndex(view->model()->index(0, kindColumn));
  press(Qt::Key_F2);
  auto* box = view->findChild<QComboBox*>();
  QVERIFY(box != nullptr && box->view()->isVisible());
  for (const Qt::Key key : {Qt::Key_Down, Qt::Key_Down, Qt::Key_Return}) {
    QTest::keyClick(box->view(), key);
  }
  QCOMPARE(owner.inputs["marks"][0]["kind"], Json("sweep"));
}

void TestTableEditor::conditionShowsColumnsAndSkipsCells() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  QTableView* view = owner.goTo("marksTableView", 1, kindColumn);
  QVERIFY(view->isColumnHidden(fromColumn));
  type("s");
  QVERIFY(!view->isColumnHidden(fromColumn));
  press(Qt::Key_Return);
  QCOMPARE(view->currentIndex().column(), static_cast<int>(fromColumn));
  view->setCurrentIndex(view->model()->index(0, kindColumn));
  press(Qt::Key_Return);
  QCOMPARE(view->currentIndex().column(), static_cast<int>(okColumn));
}

void TestTableEditor::deleteClearsInsertAndRemove() {
  FormOwner owner(fieldsOfTable());
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

void TestTableEditor::pasteIsOneEdit() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 2, xColumn);
  putOnClipboard("7,5\t8\n9\t10\n11\t12\n");
  press(Qt::Key_V, Qt::ControlModifier);
  QCOMPARE(owner.edits.size(), 1U);
  QCOMPARE(owner.inputs["marks"].size(), 5U);
  QCOMPARE(owner.inputs["marks"][2], (Json{{"x", 7.5}, {"y", 8.0}}));
  QCOMPARE(owner.edits[0].what, QString("paste into rows 3 to 5"));
}

void TestTableEditor::pasteIsRefusedWithASentence() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 0, xColumn);
  putOnClipboard("7\t8\n9\tten\n");
  press(Qt::Key_V, Qt::ControlModifier);
  QVERIFY(owner.edits.empty());
  const QString sentence = owner.find<QLabel>("marksProblem")->text();
  QVERIFY2(sentence.startsWith("Nothing was pasted: row 2, probe y: \"ten\""), qPrintable(sentence));
}

void TestTableEditor::copyGivesASpreadsheet() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", Json{{{"x", -1.5}, {"y", 2.0}}, {{"x", 3.0}}}}});
  QTableView* view = owner.goTo("marksTableView", 0, xColumn);
  view->selectionModel()->select(
      QItemSelection(view->model()->index(0, xColumn), view->model()->index(1, yColumn)),
      QItemSelectionModel::ClearAndSelect);
  press(Qt::Key_C, Qt::ControlModifier);
  QCOMPARE(QApplication::clipboard()->text(), QString("-1.5\t2\n3\t"));
}

void TestTableEditor::rowsAreLeftOutForAReason() {
  FormOwner owner(fieldsOfTable());
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

void TestTableEditor::reasonIsNeededAndEscapeCancels() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  QTableView* view = owner.goTo("marksTableView", 1, xColumn);
  press(Qt::Key_D, Qt::ControlModifier);
  type("  \n");
  QCOMPARE(QApplication::focusWidget()->objectName(), QString("reasonLineEdit"));
  press(Qt::Key_Escape);
  QVERIFY(owner.edits.empty());
  QCOMPARE(QApplication::focusWidget(), view);
}

void TestTableEditor::readOnlyTakesNothing() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  owner.form.setReadOnly(true);
  QTableView* view = owner.goTo("marksTableView", 1, xColumn);
  QCOMPARE(view->model()->rowCount(), 3);
  putOnClipboard("7\t8");
  type("9\n");
  owner.goTo("marksTableView", 1, okColumn);
  type(" ");
  for (const Qt::Key key : {Qt::Key_Delete, Qt::Key_Insert, Qt::Key_F2}) {
    press(key);
  }
  for (const Qt::Key key : {Qt::Key_Delete, Qt::Key_V, Qt::Key_X, Qt::Key_D}) {
    press(key, Qt::ControlModifier);
  }
  QVERIFY(owner.edits.empty());
  QCOMPARE(QApplication::focusWidget(), view);
}

void TestTableEditor::setValuesKeepsCellEditorAndScroll() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"masses", masses(60)}});
  QTableView* view = owner.goTo("massesTableView", 30, 0);
  QTest::qWait(1);  // scrolling to the current cell is laid out
  const int scroll = view->verticalScrollBar()->value();
  QVERIFY(scroll > 0);
  type("7.2");
  Json others = masses(60);
  others[0]["mass"] = 99.0;
  others.push_back({{"mass", 61.0}});
  owner.show({{"masses", others}, {"margin", 3}});
  QCOMPARE(view->verticalScrollBar()->value(), scroll);
  QCOMPARE(view->currentIndex().row(), 30);
  type("5\n");
  QCOMPARE(owner.inputs["masses"][30]["mass"], Json(7.25));
  QCOMPARE(owner.inputs["masses"][0]["mass"], Json(99.0));
  QCOMPARE(owner.edits.size(), 1U);
}

void TestTableEditor::decimalPointsStandUnderEachOther() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}, {"masses", Json{{{"mass", 0.738}}, {{"mass", 1.0}}}}});
  QCOMPARE(FormOwner::shown(owner.table("marksTableView"), 0, xColumn), QString("1.50"));  // caliper 0.01
  QCOMPARE(FormOwner::shown(owner.table("massesTableView"), 1, 0), QString("1.000"));
  const auto alignment = owner.table("massesTableView")->model()->index(0, 0).data(Qt::TextAlignmentRole);
  QVERIFY((alignment.toInt() & Qt::AlignRight) != 0);
}

void TestTableEditor::blankColumnsCanBeHidden() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", threeMarks}});
  QTableView* view = owner.table("marksTableView");
  auto* editor = owner.find<TableEditor>("marksTableEditor");
  QVERIFY(!editor->mayHide(xColumn));
  TableMemory memory = editor->memory();
  memory.hidden = {"remark"};
  editor->remember(memory);
  QVERIFY(view->isColumnHidden(remarkColumn));
  Json marks = threeMarks;
  marks[0]["remark"] = "loose";
  owner.show({{"marks", marks}});
  QVERIFY2(!view->isColumnHidden(remarkColumn), "what is there is seen");
}

void TestTableEditor::filesAreToldNotRead() {
  FormOwner owner(fieldsOfTable());
  QStringList paths, files, tables;
  connect(&owner.form, &InputForm::fileChosen, this, [&](const QString& path, const QString& file) {
    paths << path;
    files << file;
  });
  connect(&owner.form, &InputForm::tableFileChosen, this,
          [&](const QString& key, const QString& file) { tables << key + " " + file; });
  owner.form.setFileChooser([](QWidget*, const QString&) {
    return QStringList{"/tmp/x.csv", "/tmp/y.csv"};
  });
  owner.show({{"captures", Json{{{"axis", "x"}}}}});
  QTableView* captures = owner.goTo("capturesTableView", 0, 0);
  QCOMPARE(captures->model()->headerData(0, Qt::Horizontal).toString(), QString("capture"));
  QCOMPARE(FormOwner::shown(captures, 0, 0), QString("Enter: choose a file…"));
  type(" ");
  QCOMPARE(paths, (QStringList{"captures[1].capture", "captures[2].capture"}));
  QCOMPARE(files, (QStringList{"/tmp/x.csv", "/tmp/y.csv"}));
  press(Qt::Key_F2);
  QCOMPARE(paths.size(), 4);
  press(Qt::Key_Return);
  QCOMPARE(paths.size(), 6);
  QVERIFY(owner.edits.empty());
  owner.show({{"captures", Json{{{"axis", "x"}, {"capture", {{"file", "x.csv"}}}}}}});
  QCOMPARE(FormOwner::shown(captures, 0, 0), QString("x.csv"));
  press(Qt::Key_Return);
  QCOMPARE(captures->currentIndex().column(), 1);
  QCOMPARE(paths.size(), 6);
  auto* data = new QMimeData;
  data->setUrls({QUrl::fromLocalFile("/tmp/points.csv")});
  QApplication::clipboard()->setMimeData(data);
  owner.goTo("marksTableView", 0, 0);
  press(Qt::Key_V, Qt::ControlModifier);
  QCOMPARE(tables, QStringList{"marks /tmp/points.csv"});
}

void TestTableEditor::rowsFromAFileCanBeTypedInstead() {
  FormOwner owner(fieldsOfTable());
  owner.show({{"marks", {{"file", "points.csv"}}}});
  QVERIFY(!owner.table("marksTableView")->isVisible());
  QTest::mouseClick(owner.find<QPushButton>("marksTypeInsteadButton"), Qt::LeftButton);
  QVERIFY(owner.inputs["marks"].is_null());
  QVERIFY(owner.table("marksTableView")->isVisible());
}

void TestTableEditor::heightFollowsRowsUpToALimit() {
  FormOwner owner(fieldsOfTable());
  QTableView* view = owner.table("massesTableView");
  const auto heightFor = [&](int count) {
    owner.show({{"masses", masses(count)}});
    return view->sizeHint().height();
  };
  const int row = view->verticalHeader()->defaultSectionSize();
  QCOMPARE(heightFor(5) - heightFor(2), 3 * row);
  QCOMPARE(heightFor(100), heightFor(40));
}

void TestTableEditor::instrumentsAreChosenPerColumn() {
  FormOwner owner(fieldsOfTable());
  owner.form.setInstruments(
      {instruments::caliper(), instruments::micrometer(), instruments::pocketScale()});
  auto* button = owner.find<QToolButton>("xInstrumentButton");
  QCOMPARE(button->text(), QString("probe x, probe y: caliper"));
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

void TestTableEditor::menuDoesWhatKeysDo() {
  FormOwner owner(fieldsOfTable());
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

FETTLE_TEST(TestTableEditor)
#include "test_table_editor.moc"
