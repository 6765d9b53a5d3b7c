#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QToolButton>
#include <clocale>

#include "tests/support/test_main.h"
#include "tests/ui/forms/entry_fields.h"
#include "tests/ui/forms/form_owner.h"

using namespace fettle;
using namespace fettle::ui;
using namespace fettle::ui::tests;

// What is expected here is the project's own way of entry: numbers by comma or point, Enter, Tab and
// leaving commit, Escape restores, nothing is told twice.

class TestEntry : public QObject {
  Q_OBJECT
 private slots:
  void commaAndPointAreTheSame_data();
  void commaAndPointAreTheSame();
  void enterGoesToTheNextField();
  void enterOfTheNumberPadIsEnter();
  void leavingCommitsOnce();
  void blankIsNull();
  void escapeRestores();
  void reasonsAreShownWhileTyping();
  void refusedTextStaysUntilItIsMended();
  void refusedTextIsReplacedByTheNext();
  void wholeNumbersAreWhole();
  void fallbackIsThePlaceholder();
  void equalValueTellsNothing();
  void setValuesTellsNothingAndKeepsTheCursor();
  void refusingOwnerShowsTheOldValue();
  void conditionHidesAndShows();
  void choicesCommitAsTheyShould();
  void lettersThatBeginNoChoiceChooseNothing();
  void aRefusedAnswerIsNotWalkedOver();
  void lettersWithAltChooseNothing();
  void wheelAndPageKeysChangeNoChoice();
  void enterGoesOnAfterAnAnswerAndStaysAtTheEnd();
  void yesNoHasThreeStates();
};

void TestEntry::commaAndPointAreTheSame_data() {
  QTest::addColumn<QLocale>("locale");
  QTest::addColumn<QString>("typed");
  for (const auto& locale : {QLocale::c(), QLocale(QLocale::German, QLocale::Germany)}) {
    for (const char* typed : {"7.25", "7,25", " +7,25 "}) {
      QTest::addRow("%s %s", qPrintable(locale.name()), typed) << locale << QString(typed);
    }
  }
}

void TestEntry::commaAndPointAreTheSame() {
  QFETCH(QLocale, locale);
  QFETCH(QString, typed);
  QLocale::setDefault(locale);
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("marginLineEdit")->setFocus();
  type(typed + "\n");
  QCOMPARE(owner.edits.size(), 1U);
  QCOMPARE(owner.edits[0].path, QString("margin"));
  QCOMPARE(owner.edits[0].what, QString("margin"));
  QCOMPARE(owner.edits[0].value.get<double>(), 7.25);
  QCOMPARE(owner.line("marginLineEdit")->text(), QString("7.25"));
  QLocale::setDefault(QLocale::c());
}

void TestEntry::enterGoesToTheNextField() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("marginLineEdit")->setFocus();
  type("6\n215\n12\n");
  QCOMPARE(owner.inputs, (Json{{"margin", 6.0}, {"temperature", 215.0}, {"lines", 12}}));
  QCOMPARE(QApplication::focusWidget(), owner.find<QWidget>("modeComboBox"));
}

void TestEntry::enterOfTheNumberPadIsEnter() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("marginLineEdit")->setFocus();
  type("6");
  press(Qt::Key_Enter, Qt::KeypadModifier);
  QCOMPARE(owner.inputs, (Json{{"margin", 6.0}}));
  QCOMPARE(QApplication::focusWidget(), owner.line("temperatureLineEdit"));
  auto* mode = owner.find<QComboBox>("modeComboBox");
  mode->setFocus();
  press(Qt::Key_Enter, Qt::KeypadModifier);
  QCOMPARE(QApplication::focusWidget(), owner.find<QComboBox>("scaleComboBox"));
}

void TestEntry::leavingCommitsOnce() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("marginLineEdit")->setFocus();
  type("8\t");
  QCOMPARE(owner.edits.size(), 1U);
  QCOMPARE(QApplication::focusWidget(), owner.line("temperatureLineEdit"));
  type("200");
  owner.line("marginLineEdit")->setFocus(Qt::MouseFocusReason);
  QCOMPARE(owner.edits.size(), 2U);
  QCOMPARE(owner.inputs["temperature"], Json(200.0));
}

void TestEntry::blankIsNull() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"margin", 8}});
  owner.line("marginLineEdit")->setFocus();
  owner.line("marginLineEdit")->selectAll();
  press(Qt::Key_Delete);
  press(Qt::Key_Return);
  QCOMPARE(owner.edits.size(), 1U);
  QVERIFY(owner.edits[0].value.is_null());
}

void TestEntry::escapeRestores() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"margin", 8}});
  owner.line("marginLineEdit")->setFocus();
  type("77x");
  QVERIFY(!owner.find<QLabel>("fieldProblem")->isHidden());
  press(Qt::Key_Escape);
  QCOMPARE(owner.line("marginLineEdit")->text(), QString("8"));
  QVERIFY(owner.find<QLabel>("fieldProblem")->isHidden());
  type("\t");
  QVERIFY(owner.edits.empty());
}

void TestEntry::reasonsAreShownWhileTyping() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* reason = owner.find<QLabel>("fieldProblem");
  owner.line("temperatureLineEdit")->setFocus();
  type("2");
  QVERIFY2(reason->isHidden(), "2 may become 215");
  type("15");
  QVERIFY(reason->isHidden());
  type("0");
  QCOMPARE(reason->text(),
           QString("temperature: 2150 is not possible; a number from 150 to 400 in °C is needed."));
  press(Qt::Key_Backspace);
  QVERIFY(reason->isHidden());
  type("o");
  QVERIFY(reason->text().startsWith("temperature: \"215o\" is not a number"));
}

void TestEntry::refusedTextStaysUntilItIsMended() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("temperatureLineEdit")->setFocus();
  type("12\n");
  QCOMPARE(QApplication::focusWidget(), owner.line("temperatureLineEdit"));
  type("\t");
  QVERIFY(owner.edits.empty());
  QCOMPARE(owner.line("temperatureLineEdit")->text(), QString("12"));
  owner.form.setValues(owner.inputs);
  QCOMPARE(owner.line("temperatureLineEdit")->text(), QString("12"));
  QVERIFY(!owner.find<QLabel>("fieldProblem")->isHidden());
  owner.show({{"temperature", 210}});
  QCOMPARE(owner.line("temperatureLineEdit")->text(), QString("210"));
  QVERIFY(owner.find<QLabel>("fieldProblem")->isHidden());
}

void TestEntry::refusedTextIsReplacedByTheNext() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("temperatureLineEdit")->setFocus();
  type("1e9\n");
  QVERIFY(owner.edits.empty());
  type("250\n");
  QCOMPARE(owner.inputs["temperature"], Json(250.0));
}

void TestEntry::wholeNumbersAreWhole() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.line("linesLineEdit")->setFocus();
  type("7.5\n");
  QVERIFY(owner.edits.empty());
  owner.line("linesLineEdit")->selectAll();
  type("7\n");
  QVERIFY(owner.inputs["lines"].is_number_integer());
}

void TestEntry::fallbackIsThePlaceholder() {
  FormOwner owner(fieldsOf<EntryInputs>());
  QCOMPARE(owner.line("marginLineEdit")->placeholderText(), QString("5"));
  QCOMPARE(owner.line("marginLineEdit")->text(), QString());
  QCOMPARE(owner.find<QComboBox>("modeComboBox")->currentText(), QString("step"));
}

void TestEntry::equalValueTellsNothing() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"margin", 8}});
  owner.line("marginLineEdit")->setFocus();
  owner.line("marginLineEdit")->selectAll();
  type("8,0\n");
  QVERIFY(owner.edits.empty());
  QCOMPARE(owner.line("marginLineEdit")->text(), QString("8"));
}

void TestEntry::setValuesTellsNothingAndKeepsTheCursor() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"margin", 12.5}});
  auto* line = owner.line("marginLineEdit");
  line->setFocus();
  line->setCursorPosition(1);
  owner.show({{"margin", 13.5}, {"mode", "hold"}, {"dry", true}, {"remark", "warm"}, {"lines", 4}});
  QVERIFY(owner.edits.empty());
  QCOMPARE(QApplication::focusWidget(), line);
  QCOMPARE(line->cursorPosition(), 1);
  QCOMPARE(line->text(), QString("13.5"));
  type("0");
  owner.show({{"margin", 13.5}, {"mode", "step"}});
  QCOMPARE(line->text(), QString("103.5"));
}

void TestEntry::refusingOwnerShowsTheOldValue() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"margin", 8}});
  owner.answers = false;
  owner.line("marginLineEdit")->setFocus();
  owner.line("marginLineEdit")->selectAll();
  type("9\n");
  QCOMPARE(owner.edits.size(), 1U);
  QCOMPARE(owner.line("marginLineEdit")->text(), QString("8"));
}

void TestEntry::conditionHidesAndShows() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* hysteresis = owner.find<QWidget>("hysteresisNumberEditor");
  QVERIFY(!hysteresis->isVisible());
  owner.show({{"mode", "relay"}});
  QVERIFY(hysteresis->isVisible());
  owner.show({{"mode", "hold"}});
  QVERIFY(!hysteresis->isVisible());
}

void TestEntry::choicesCommitAsTheyShould() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* box = owner.find<QComboBox>("modeComboBox");
  box->setFocus();
  press(Qt::Key_R);
  QCOMPARE(owner.inputs["mode"], Json("relay"));
  press(Qt::Key_Down);
  QVERIFY2(box->view()->isVisible(), "arrows open the list");
  QTest::keyClick(box->view(), Qt::Key_Down);
  QCOMPARE(owner.edits.size(), 1U);
  QTest::keyClick(box->view(), Qt::Key_Return);
  QCOMPARE(owner.inputs["mode"], Json("hold"));
  press(Qt::Key_Return);
  auto* scale = owner.find<QComboBox>("scaleComboBox");
  QCOMPARE(QApplication::focusWidget(), scale);
  emit scale->activated((scale->setCurrentIndex(2), 2));  // as the opened list does
  QCOMPARE(owner.inputs["scale"], Json("coarse"));
  emit scale->activated((scale->setCurrentIndex(0), 0));
  QVERIFY(owner.inputs["scale"].is_null());
}

void TestEntry::lettersThatBeginNoChoiceChooseNothing() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.show({{"mode", "hold"}});
  owner.find<QComboBox>("modeComboBox")->setFocus();
  type("rush");
  QCOMPARE(owner.inputs["mode"], Json("hold"));
  QCOMPARE(owner.find<QLabel>("fieldProblem")->text(),
           QString("mode: no choice begins with \"rush\": step, relay, hold."));
  type("\t");
  QVERIFY(owner.find<QLabel>("fieldProblem")->isHidden());
}

void TestEntry::aRefusedAnswerIsNotWalkedOver() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* box = owner.find<QComboBox>("modeComboBox");
  box->setFocus();
  type("q\n");
  QCOMPARE(QApplication::focusWidget(), box);
  QCOMPARE(owner.find<QLabel>("fieldProblem")->text(),
           QString("mode: no choice begins with \"q\": step, relay, hold."));
  type("\n");
  QCOMPARE(QApplication::focusWidget(), owner.find<QComboBox>("scaleComboBox"));
  auto* yes = owner.find<QToolButton>("dryYesButton");
  yes->setFocus();
  type("q\n");
  QCOMPARE(QApplication::focusWidget(), yes);
  QCOMPARE(owner.find<QLabel>("fieldProblem")->text(),
           QString("dried: no choice begins with \"q\": yes, no."));
  type("\n");
  QCOMPARE(QApplication::focusWidget(), owner.line("placeLineEdit"));
  QVERIFY(owner.edits.empty());
}

// They belong to the menus and labels of the window.
void TestEntry::lettersWithAltChooseNothing() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* box = owner.find<QComboBox>("modeComboBox");
  box->setFocus();
  QKeyEvent event(QEvent::KeyPress, Qt::Key_R, Qt::AltModifier, "r");
  QApplication::sendEvent(box, &event);
  QVERIFY(!event.isAccepted());
  QCOMPARE(box->currentText(), QString("step"));
  QVERIFY(owner.edits.empty());
}

void TestEntry::wheelAndPageKeysChangeNoChoice() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* box = owner.find<QComboBox>("modeComboBox");
  box->setFocus();
  const QPointF at = box->rect().center();
  QWheelEvent wheel(at, box->mapToGlobal(at), QPoint(), QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(box, &wheel);
  QVERIFY2(!wheel.isAccepted(), "the page scrolls instead");
  for (const Qt::Key key : {Qt::Key_PageDown, Qt::Key_PageUp, Qt::Key_End}) {
    QKeyEvent event(QEvent::KeyPress, key, Qt::NoModifier);
    QApplication::sendEvent(box, &event);
    QVERIFY2(!event.isAccepted(), "the page scrolls instead");
  }
  QCOMPARE(box->currentText(), QString("step"));
  QVERIFY(owner.edits.empty());
}

void TestEntry::enterGoesOnAfterAnAnswerAndStaysAtTheEnd() {
  FormOwner owner(fieldsOf<EntryInputs>());
  owner.find<QToolButton>("dryYesButton")->setFocus();
  type("y\n");
  QCOMPARE(owner.inputs["dry"], Json(true));
  QCOMPARE(QApplication::focusWidget(), owner.line("placeLineEdit"));
  type("shed\n");
  QCOMPARE(owner.inputs["place"], Json("shed"));
  QCOMPARE(QApplication::focusWidget(), owner.line("placeLineEdit"));
}

void TestEntry::yesNoHasThreeStates() {
  FormOwner owner(fieldsOf<EntryInputs>());
  auto* yes = owner.find<QToolButton>("dryYesButton");
  auto* no = owner.find<QToolButton>("dryNoButton");
  QVERIFY(!yes->isChecked() && !no->isChecked());
  QTest::mouseClick(yes, Qt::LeftButton);
  QCOMPARE(owner.inputs["dry"], Json(true));
  yes->setFocus();
  press(Qt::Key_N);
  QCOMPARE(owner.inputs["dry"], Json(false));
  QVERIFY(!yes->isChecked() && no->isChecked());
  QTest::mouseClick(no, Qt::LeftButton);
  QVERIFY(owner.inputs["dry"].is_null());
  QCOMPARE(owner.edits.back().what, QString("dried"));
}

FETTLE_TEST(TestEntry)
#include "test_entry.moc"
