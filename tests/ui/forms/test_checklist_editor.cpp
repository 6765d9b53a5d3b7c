#include "tests/support/test_main.h"
#include "tests/ui/forms/form_owner.h"
#include "ui/forms/checklist_model.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

// What is expected here is the project's own way of entry: one key per item.
namespace {

struct ChecklistInputs {
  std::vector<ChecklistAnswer> checks;
  std::string after;
  void describe(FieldList& fields) {
    fields.checklist("checks", checks, "checks",
                     {{"earth", "Earth bond"}, {"fuses", "Fuses"}, {"stop", "Emergency stop"}});
    fields.text("after", after, "after");
  }
};

Json ok(const char* item, bool isOk) {
  return {{"item", item}, {"ok", isOk}, {"initials", "RK"}, {"time", "2026-11-25T14:05"}};
}

struct CheckOwner : FormOwner {
  CheckOwner() : FormOwner(fieldsOf<ChecklistInputs>()) {
    form.setInitials("RK");
    form.setClock([] { return QDateTime(QDate(2026, 11, 25), QTime(14, 5, 33)); });
    goTo("checksTableView", 0, ChecklistModel::answerColumn);
  }
};

}  // namespace

class TestChecklistEditor : public QObject {
  Q_OBJECT
 private slots:
  void spaceTicksAndGoesOn() {
    CheckOwner owner;
    type("   ");
    QCOMPARE(owner.inputs["checks"], (Json{ok("earth", true), ok("fuses", true), ok("stop", true)}));
    QCOMPARE(owner.edits.size(), 3U);
    QCOMPARE(owner.edits[1].what, QString("Fuses: ok"));
    QCOMPARE(FormOwner::shown(owner.table("checksTableView"), 0, ChecklistModel::answerColumn),
             QString("✓ ok"));
  }

  void afterARemarkTheNextItemIsAnswered() {
    CheckOwner owner;
    type("xloose\n ");
    QCOMPARE(owner.inputs["checks"][0]["remark"], Json("loose"));
    QCOMPARE(owner.inputs["checks"][1], ok("fuses", true));
    type("x\n ");  // no remark
    QCOMPARE(owner.inputs["checks"][2]["ok"], Json(false));
  }

  void spaceAnswersFromTheItemToo() {
    CheckOwner owner;
    owner.goTo("checksTableView", 0, ChecklistModel::itemColumn);
    type("  ");
    QCOMPARE(owner.inputs["checks"], (Json{ok("earth", true), ok("fuses", true)}));
  }

  void enterOnTheLastRowGoesOn() {
    CheckOwner owner;
    type("   \nbelt\n");
    QCOMPARE(owner.inputs["checks"], (Json{ok("earth", true), ok("fuses", true), ok("stop", true)}));
    QCOMPARE(owner.inputs["after"], Json("belt"));
    owner.goTo("checksTableView", 2, ChecklistModel::remarkColumn);
    type("loose\n");
    QCOMPARE(owner.inputs["checks"][2]["remark"], Json("loose"));
    QCOMPARE(QApplication::focusWidget(), owner.line("afterLineEdit"));
  }

  void xMarksAndAsksForARemark() {
    CheckOwner owner;
    type("x");
    QCOMPARE(owner.inputs["checks"], Json{ok("earth", false)});
    type("xenon lamp\n");
    Json answer = ok("earth", false);
    answer["remark"] = "xenon lamp";
    QCOMPARE(owner.inputs["checks"], Json{answer});
    QCOMPARE(owner.edits[1].what, QString("Earth bond: remark"));
  }

  void lettersBeginARemark() {
    CheckOwner owner;
    press(Qt::Key_Down);
    type("loose\n");
    QCOMPARE(owner.inputs["checks"], (Json{{{"item", "fuses"}, {"remark", "loose"}}}));
  }

  void deleteTakesTheAnswerBack() {
    CheckOwner owner;
    owner.show({{"checks", Json{ok("earth", true), ok("stop", true)}}});
    press(Qt::Key_Delete);
    QCOMPARE(owner.inputs["checks"], Json{ok("stop", true)});
    QCOMPARE(owner.edits[0].what, QString("Earth bond: not answered"));
    press(Qt::Key_Delete);
    QCOMPARE(owner.edits.size(), 1U);
  }

  void clickingGoesThroughTheAnswers() {
    CheckOwner owner;
    QTableView* view = owner.table("checksTableView");
    const QPoint at = view->visualRect(view->model()->index(2, ChecklistModel::answerColumn)).center();
    QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, at);
    QCOMPARE(owner.inputs["checks"], Json{ok("stop", true)});
    QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, at);
    QCOMPARE(owner.inputs["checks"], Json{ok("stop", false)});
    QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, at);
    QVERIFY(owner.inputs["checks"].is_null());
  }

  void tickingTwiceTellsOnce() {
    CheckOwner owner;
    owner.show({{"checks", Json{ok("earth", true)}}});
    type(" ");
    QVERIFY(owner.edits.empty());
  }

  void readOnlyTakesNothing() {
    CheckOwner owner;
    owner.form.setReadOnly(true);
    type(" xab");
    press(Qt::Key_Delete);
    QVERIFY(owner.edits.empty());
  }
};

FETTLE_TEST(TestChecklistEditor)
#include "test_checklist_editor.moc"
