#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QScrollBar>
#include <QSettings>

#include "tests/support/test_main.h"
#include "tests/ui/forms/form_owner.h"
#include "tests/ui/forms/table_fields.h"
#include "ui/forms/any_editor.h"
#include "ui/forms/cell_view.h"
#include "ui/forms/table_editor.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

// What is expected here is the project's own way of entry: a caliper that types a value and Enter fills
// cells in order; every change is one edit of the whole table with words for the undo menu.

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
  void readOnlyTakesNothing();
  void setValuesKeepsCellEditorAndScroll();
  void decimalPointsStandUnderEachOther();
  void blankColumnsCanBeHidden();
  void filesAreToldNotRead();
  void rowsFromAFileCanBeTypedInstead();
  void heightFollowsRowsUpToALimit();
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
  QTableView* view = owner.goTo("massesTableView", 0, 0);
  type("1\n2\n3\n4\n");
  QCOMPARE(owner.inputs["masses"], masses(4));
  QCOMPARE(view->currentIndex().row(), 4);
  QCOMPARE(QApplication::focusWidget(), view);
}

void TestTableEditor::enterMayGoDown() {
  FormOwner owner(fieldsOf<TableInputs>());
  auto* editor = owner.find<TableEditor>("marksTableEditor");
  TableMemory memory = editor->memory();
  memory.enter = CellView::Direction::down;
  editor->remember(memory);
  owner.goTo("marksTableView", 0, yColumn);
  type("1\n2\n3\n");
  QCOMPARE(owner.inputs["marks"], (Json{{{"y", 1.0}}, {{"y", 2.0}}, {{"y", 3.0}}}));
  FormOwner later(fieldsOf<TableInputs>());
  QCOMPARE(later.find<TableEditor>("marksTableEditor")->memory().enter, CellView::Direction::down);
}

void TestTableEditor::tabLeavesTheTable() {
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 2, xColumn);
  type("7\n");
  QCOMPARE(owner.edits[0].path, QString("marks"));
  QCOMPARE(owner.edits[0].what, QString("row 3, probe x"));
}

void TestTableEditor::ownerWhoAnswersLaterLosesNothing() {
  InputForm form(&makeAnyEditor);
  Json last;
  connect(&form, &InputForm::edited, this,
          [&](const QString&, const Json& value, const QString&) { last = value; });
  form.setFields(fieldsOf<TableInputs>());
  form.show();
  QVERIFY(QTest::qWaitForWindowActive(&form));
  auto* view = form.findChild<QTableView*>("massesTableView");
  view->setFocus();
  view->setCurrentIndex(view->model()->index(0, 0));
  type("1\n2\n3\n");
  QCOMPARE(last, masses(3));
}

void TestTableEditor::escapeRestoresTheCell() {
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
  owner.show({{"marks", threeMarks}});
  owner.goTo("marksTableView", 0, xColumn);
  type("1,5,2");
  owner.line("marginLineEdit")->setFocus(Qt::MouseFocusReason);
  QVERIFY(owner.edits.empty());
  QVERIFY(owner.find<QLabel>("marksProblem")->text().endsWith("The cell keeps 1.5."));
}

void TestTableEditor::equalValueTellsNothing() {
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  QCOMPARE(owner.find<QLabel>("marksProblem")->text(),
           QString("kind: no choice begins with \"rz\": tap, sweep, run."));
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
  FormOwner owner(fieldsOf<TableInputs>());
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

void TestTableEditor::readOnlyTakesNothing() {
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
  owner.show({{"marks", threeMarks}, {"masses", Json{{{"mass", 0.738}}, {{"mass", 1.0}}}}});
  QCOMPARE(FormOwner::shown(owner.table("marksTableView"), 0, xColumn), QString("1.50"));  // caliper 0.01
  QCOMPARE(FormOwner::shown(owner.table("massesTableView"), 1, 0), QString("1.000"));
  const auto alignment = owner.table("massesTableView")->model()->index(0, 0).data(Qt::TextAlignmentRole);
  QVERIFY((alignment.toInt() & Qt::AlignRight) != 0);
}

void TestTableEditor::blankColumnsCanBeHidden() {
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
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
  FormOwner owner(fieldsOf<TableInputs>());
  owner.show({{"marks", {{"file", "points.csv"}}}});
  QVERIFY(!owner.table("marksTableView")->isVisible());
  QTest::mouseClick(owner.find<QPushButton>("marksTypeInsteadButton"), Qt::LeftButton);
  QVERIFY(owner.inputs["marks"].is_null());
  QVERIFY(owner.table("marksTableView")->isVisible());
}

void TestTableEditor::heightFollowsRowsUpToALimit() {
  FormOwner owner(fieldsOf<TableInputs>());
  QTableView* view = owner.table("massesTableView");
  const auto heightFor = [&](int count) {
    owner.show({{"masses", masses(count)}});
    return view->sizeHint().height();
  };
  const int row = view->verticalHeader()->defaultSectionSize();
  QCOMPARE(heightFor(5) - heightFor(2), 3 * row);
  QCOMPARE(heightFor(100), heightFor(40));
}

FETTLE_TEST(TestTableEditor)
#include "test_table_editor.moc"
