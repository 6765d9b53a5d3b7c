#include <QAction>
#include <QComboBox>
#include <QToolButton>

#include "tests/support/test_main.h"
#include "tests/ui/forms/entry_fields.h"
#include "tests/ui/forms/form_owner.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

/// The form as a whole: what the keyboard reaches, what it is called, what the window may ask of it.
class TestInputForm : public QObject {
  Q_OBJECT
 private slots:
  void readOnlyTakesNothing() {
    FormOwner owner(fieldsOf<EntryInputs>());
    owner.show({{"margin", 8}, {"dry", true}});
    owner.form.setReadOnly(true);
    owner.line("marginLineEdit")->setFocus();
    type("9\n");
    owner.find<QComboBox>("modeComboBox")->setFocus();
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    QTest::mouseClick(owner.find<QToolButton>("dryNoButton"), Qt::LeftButton);
    QVERIFY(owner.edits.empty());
    QCOMPARE(owner.line("marginLineEdit")->text(), QString("8"));
    QCOMPARE(owner.find<QComboBox>("modeComboBox")->currentText(), QString("step"));
    QVERIFY(owner.find<QToolButton>("dryYesButton")->isChecked());
  }

  void tabReachesEverything() {
    FormOwner owner(fieldsOf<EntryInputs>());
    owner.line("marginLineEdit")->setFocus();
    QStringList order;
    for (int i = 0; i < 8; ++i) {
      order << QApplication::focusWidget()->objectName();
      press(Qt::Key_Tab);
    }
    QCOMPARE(order, (QStringList{"marginLineEdit", "temperatureLineEdit", "linesLineEdit", "modeComboBox",
                                 "scaleComboBox", "remarkLineEdit", "dryYesButton", "dryNoButton"}));
  }

  void everythingHasAName() {
    FormOwner owner(fieldsOf<EntryInputs>());
    int inputs = 0;
    for (const QWidget* widget : owner.form.findChildren<QWidget*>()) {
      const bool isPart = widget->window() == &owner.form;  // not the list of a closed combo box
      if (isPart && widget->focusPolicy() != Qt::NoFocus && widget->focusProxy() == nullptr) {
        ++inputs;
        QVERIFY2(!widget->accessibleName().isEmpty(), qPrintable(widget->objectName()));
        QVERIFY2(!widget->objectName().isEmpty(), qPrintable(widget->accessibleName()));
      }
    }
    QVERIFY(inputs >= 9);
    QCOMPARE(owner.line("marginLineEdit")->accessibleName(), QString("margin, mm"));
  }

  void undoIsTheWindowsWhileNothingIsTyped() {
    FormOwner owner(fieldsOf<EntryInputs>());
    owner.show({{"margin", 8}});
    int undone = 0;
    QAction undo;
    undo.setShortcut(QKeySequence::Undo);
    connect(&undo, &QAction::triggered, this, [&] { ++undone; });
    owner.form.addAction(&undo);
    auto* line = owner.line("marginLineEdit");
    line->setFocus();
    press(Qt::Key_Z, Qt::ControlModifier);
    QCOMPARE(undone, 1);
    type("9");
    press(Qt::Key_Z, Qt::ControlModifier);
    QCOMPARE(undone, 1);
    QCOMPARE(line->text(), QString("8"));
  }

  void pendingEntryIsCommittedOnRequest() {
    FormOwner owner(fieldsOf<EntryInputs>());
    owner.line("marginLineEdit")->setFocus();
    type("9");
    QVERIFY(owner.edits.empty());
    owner.form.commitPending();
    QCOMPARE(owner.inputs["margin"], Json(9.0));
  }
};

FETTLE_TEST(TestInputForm)
#include "test_input_form.moc"
