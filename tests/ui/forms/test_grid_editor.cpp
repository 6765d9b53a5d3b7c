#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "tests/support/test_main.h"
#include "tests/ui/forms/form_owner.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

// What is expected here is the project's own way of entry: positions as lists, the back of the bed on top.
namespace {

struct GridInputs {
  GridReadings grid;
  double bed = 60;
  void describe(FieldList& fields) {
    fields.grid("grid", grid, "heights", "mm");
    fields.number("bed", bed, "bed", "C");
  }
};

const Json square = {{"x", {0.0, 10.0}}, {"y", {0.0, 20.0}}, {"z", {{0.1, 0.2}, {0.3, 0.4}}}};

QDialog* openDialog(FormOwner& owner, const char* name) {
  auto* dialog = owner.form.findChild<QDialog*>(name);
  return dialog != nullptr && QTest::qWaitForWindowExposed(dialog) ? dialog : nullptr;
}

/// Whether the preview came up, found all it needs, and was left by taking in.
bool isTakenIn(FormOwner& owner) {
  const QDialog* dialog = openDialog(owner, "intakeDialog");
  auto* takeIn = dialog == nullptr ? nullptr : dialog->findChild<QPushButton*>("takeInButton");
  if (takeIn == nullptr || !QTest::qWaitFor([&] { return takeIn->isEnabled(); })) {
    return false;
  }
  takeIn->click();
  return true;
}

/// The dialog of an even grid, with the keyboard in its first field.
QDialog* evenGridDialogOf(FormOwner& owner) {
  QTest::mouseClick(owner.find<QPushButton>("gridEvenButton"), Qt::LeftButton);
  QDialog* dialog = openDialog(owner, "evenGridDialog");
  if (dialog == nullptr) {
    return nullptr;
  }
  dialog->activateWindow();
  dialog->findChild<QLineEdit*>("xFirstLineEdit")->setFocus();
  return QTest::qWaitForWindowActive(dialog) ? dialog : nullptr;
}

}  // namespace

class TestGridEditor : public QObject {
  Q_OBJECT
 private slots:
  void positionsMakeTheGrid() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.line("gridXLineEdit")->setFocus();
    type("0 10,5 20\n");
    QCOMPARE(QApplication::focusWidget(), owner.line("gridYLineEdit"));
    type("0..30: 2\n");
    QCOMPARE(QApplication::focusWidget(), owner.table("gridTableView"));
    QCOMPARE(owner.inputs["grid"],
             (Json{{"x", {0.0, 10.5, 20.0}},
                   {"y", {0.0, 30.0}},
                   {"z", {{nullptr, nullptr, nullptr}, {nullptr, nullptr, nullptr}}}}));
    QCOMPARE(owner.edits[0].what, QString("heights, positions in x"));
    QCOMPARE(owner.line("gridYLineEdit")->text(), QString("0  30"));
    type("0.5\n");
    QCOMPARE(owner.inputs["grid"]["z"][1][0], Json(0.5));  // the back row is on top
  }

  void wrongPositionsAreRefused() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.line("gridXLineEdit")->setFocus();
    type("0 10 5\t");
    QVERIFY(owner.edits.empty());
    QVERIFY(owner.find<QLabel>("gridProblem")->text().contains("rise or fall"));
  }

  void backIsOnTopAndEnterGoesOn() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.show({{"grid", square}});
    QTableView* view = owner.goTo("gridTableView", 0, 0);
    QCOMPARE(FormOwner::shown(view, 0, 0), QString("0.3"));
    QCOMPARE(view->model()->headerData(0, Qt::Vertical).toString(), QString("20"));
    type("0,31\n0,41\n0,11\n");
    QCOMPARE(owner.inputs["grid"]["z"], (Json{{0.11, 0.2}, {0.31, 0.41}}));
    QCOMPARE(owner.edits[0].what, QString("heights, x 0 y 20"));
    press(Qt::Key_Delete);
    QCOMPARE(owner.inputs["grid"]["z"], (Json{{0.11, nullptr}, {0.31, 0.41}}));
  }

  void heightsThatFitArePastedInPlace() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.show({{"grid", square}});
    owner.goTo("gridTableView", 0, 0);
    putOnClipboard("1\t2\n3\t4");
    press(Qt::Key_V, Qt::ControlModifier);
    QCOMPARE(owner.inputs["grid"]["z"], (Json{{3.0, 4.0}, {1.0, 2.0}}));
    QCOMPARE(owner.edits.size(), 1U);
    putOnClipboard("1\tx");
    press(Qt::Key_V, Qt::ControlModifier);
    QCOMPARE(owner.edits.size(), 1U);
    QVERIFY(owner.find<QLabel>("gridProblem")->text().contains("\"x\""));
  }

  void wholeGridGoesThroughTheIntakeDialog() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.show({{"grid", square}});
    owner.goTo("gridTableView", 1, 1);
    putOnClipboard("0,5\t0,6\n0,7\t0,8\n");
    press(Qt::Key_V, Qt::ControlModifier);
    QVERIFY(isTakenIn(owner));
    QTRY_COMPARE(owner.edits.size(), 1U);
    // Positions come from the grid that was there, the first line of the text is the front row.
    QCOMPARE(owner.inputs["grid"],
             (Json{{"x", {0.0, 10.0}}, {"y", {0.0, 20.0}}, {"z", {{0.5, 0.6}, {0.7, 0.8}}}}));
  }

  void linesPastedIntoThePositionsAreAWholeGrid() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.form.focusOnFirst();
    QCOMPARE(QApplication::focusWidget(), owner.line("gridXLineEdit"));
    putOnClipboard("# x 0..10, y 20..0\n0,5\t0,6\n0,7\t0,8\n");
    press(Qt::Key_V, Qt::ControlModifier);
    QVERIFY(isTakenIn(owner));
    QTRY_COMPARE(owner.inputs["grid"],
                 (Json{{"x", {0.0, 10.0}}, {"y", {0.0, 20.0}}, {"z", {{0.7, 0.8}, {0.5, 0.6}}}}));
  }

  void refusalsOfAnEvenGridAreNotPaintedOverTheFields() {
    FormOwner owner(fieldsOf<GridInputs>());
    QDialog* dialog = evenGridDialogOf(owner);
    QVERIFY(dialog != nullptr);
    type("abc\tabc\tabc\tabc\tabc\tabc\t");
    const auto* problem = dialog->findChild<QLabel*>("fieldProblem");
    const auto placeOf = [&](const QWidget* part) {
      return QRect(part->mapTo(dialog, QPoint()), part->size());
    };
    QTRY_VERIFY(problem->height() >= problem->heightForWidth(problem->width()));
    for (const auto* line : dialog->findChildren<QLineEdit*>()) {
      QVERIFY(!placeOf(line).intersects(placeOf(problem)));
    }
  }

  void evenGridIsLaidOut() {
    FormOwner owner(fieldsOf<GridInputs>());
    QDialog* dialog = evenGridDialogOf(owner);
    QVERIFY(dialog != nullptr);
    type("15\n285\n4\n15\n195\n3\n");
    auto* layOut = dialog->findChild<QPushButton*>("evenGridOkButton");
    QVERIFY(layOut->isEnabled());
    layOut->click();
    QCOMPARE(owner.edits.size(), 1U);
    QCOMPARE(owner.inputs["grid"]["x"], (Json{15.0, 105.0, 195.0, 285.0}));
    QCOMPARE(owner.inputs["grid"]["y"], (Json{15.0, 105.0, 195.0}));
  }

  void readOnlyTakesNothing() {
    FormOwner owner(fieldsOf<GridInputs>());
    owner.show({{"grid", square}});
    owner.form.setReadOnly(true);
    owner.goTo("gridTableView", 0, 0);
    type("9\n");
    press(Qt::Key_Delete);
    putOnClipboard("1");
    press(Qt::Key_V, Qt::ControlModifier);
    QVERIFY(owner.edits.empty());
  }
};

FETTLE_TEST(TestGridEditor)
#include "test_grid_editor.moc"
