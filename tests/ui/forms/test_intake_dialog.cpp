#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTableWidget>
#include <QTest>
#include <QtWidgets>

#include "core/history/evaluation.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"
#include "tests/support/wave_file.h"
#include "ui/forms/field_value.h"
#include "ui/forms/intake_dialog.h"

using namespace fettle;
using namespace fettle::ui;
using fettle::tests::dataFile;

// Small texts made here; their values are read off by eye. The larger ones come from tests/data, whose
// script says what they hold.
namespace {

Field column(const char* key, const char* label, const char* unit, bool required) {
  Field field;
  field.key = key;
  field.label = label;
  field.unit = unit;
  field.required = required;
  return field;
}

Field captureField() {
  Field field;
  field.key = "log";
  field.label = "log";
  field.kind = FieldKind::capture;
  field.columns = {column("time_s", "time", "s", true), column("temp_C", "temperature", "C", true),
                   column("duty", "duty", "1", false)};
  return field;
}

Field tableField() {
  Field field = captureField();
  field.key = "points";
  field.kind = FieldKind::table;
  return field;
}

Field gridField() {
  Field field = column("grid", "heights", "mm", false);
  field.kind = FieldKind::grid;
  return field;
}

/// What the dialog agreed to, read the way an evaluation reads it.
tl::expected<CapturePointer, std::string> readBack(const Field& field, const Json& reference,
                                                   const std::string& bytes) {
  IntakeFiles files([&](const Json&) -> tl::expected<std::string, std::string> { return bytes; });
  return files.capture(reference, field);
}

template <typename Widget>
Widget* find(IntakeDialog& dialog, const char* name) {
  return dialog.findChild<Widget*>(name);
}

bool canTakeIn(IntakeDialog& dialog) {
  return QTest::qWaitFor([&] { return find<QPushButton>(dialog, "takeInButton")->isEnabled(); }, 20000);
}

QString problem(IntakeDialog& dialog) {
  auto* label = find<QLabel>(dialog, "intakeProblem");
  static_cast<void>(QTest::qWaitFor([&] { return !label->text().isEmpty(); }, 20000));
  return label->text();
}

void choose(QComboBox* box, int index) {
  box->setCurrentIndex(index);
  emit box->activated(index);
}

std::string dataBytes(const char* name) {
  QFile file(dataFile(name));
  return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

}  // namespace

class TestIntakeDialog : public QObject {
  Q_OBJECT
 private slots:
  void init() { QSettings().clear(); }

  void headersAreRecognised() {
    const std::string text = "time [ms];temperature\n0;20,5\n500;21\n1000;22,25\n";
    IntakeDialog dialog(captureField(), "a.csv", text);
    QVERIFY(canTakeIn(dialog));
    const Json reference = dialog.reference();
    QCOMPARE(reference["file"], Json("a.csv"));
    QCOMPARE(reference["columns"], (Json{{"time_s", 1}, {"temp_C", 2}, {"duty", nullptr}}));
    QCOMPARE(reference["units"], (Json{{"time_s", "ms"}, {"temp_C", "C"}}));
    QCOMPARE(reference["rows"], Json(3));
    QVERIFY(!reference.contains("format"));
    const auto capture = readBack(captureField(), reference, text);
    QVERIFY(capture.has_value());
    QCOMPARE((*capture)->column("time_s"), (std::vector<double>{0, 0.5, 1}));
    QCOMPARE((*capture)->column("temp_C"), (std::vector<double>{20.5, 21, 22.25}));
    QCOMPARE(find<QTableWidget>(dialog, "previewTableWidget")->item(2, 1)->text(), QString("22,25"));
  }

  void columnsAndUnitsCanBeChanged() {
    const std::string text = "a,b,c\n0,1,20\n1,2,21\n2,3,22\n";
    IntakeDialog dialog(captureField(), "a.csv", text);
    QVERIFY(problem(dialog).contains("time, temperature"));
    choose(find<QComboBox>(dialog, "timeSColumnComboBox"), 1);
    choose(find<QComboBox>(dialog, "tempCColumnComboBox"), 3);
    auto* unit = find<QComboBox>(dialog, "timeSUnitComboBox");
    choose(unit, unit->findData("min"));
    QVERIFY(canTakeIn(dialog));
    const auto capture = readBack(captureField(), dialog.reference(), text);
    QVERIFY(capture.has_value());
    QCOMPARE((*capture)->column("time_s"), (std::vector<double>{0, 60, 120}));
    QCOMPARE((*capture)->column("temp_C"), (std::vector<double>{20, 21, 22}));
  }

  void formatCanBeChanged() {
    // Whole numbers and commas: either a delimiter or a decimal sign.
    const std::string text = "0;20,5\n1;21,5\n2;22,5\n";
    IntakeDialog dialog(captureField(), "a.csv", text);
    auto* sign = find<QComboBox>(dialog, "decimalSignComboBox");
    QCOMPARE(sign->currentText(), QString("comma"));
    choose(sign, 0);
    QVERIFY(!problem(dialog).isEmpty());
    choose(sign, 1);
    choose(find<QComboBox>(dialog, "timeSColumnComboBox"), 1);
    choose(find<QComboBox>(dialog, "tempCColumnComboBox"), 2);
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(dialog.reference()["format"], (Json{{"decimal_sign", ","}}));
    QVERIFY(readBack(captureField(), dialog.reference(), text).has_value());
  }

  void mappingIsRemembered() {
    const std::string text = "a,b\n0,20\n1,21\n2,22\n";
    {
      IntakeDialog dialog(captureField(), "a.csv", text);
      choose(find<QComboBox>(dialog, "timeSColumnComboBox"), 1);
      choose(find<QComboBox>(dialog, "tempCColumnComboBox"), 2);
      QVERIFY(canTakeIn(dialog));
      find<QPushButton>(dialog, "takeInButton")->click();
      QCOMPARE(dialog.result(), static_cast<int>(QDialog::Accepted));
    }
    IntakeDialog again(captureField(), "b.csv", "a,b\n0,30\n1,31\n");
    QVERIFY(canTakeIn(again));
    QCOMPARE(again.reference()["columns"], (Json{{"time_s", 1}, {"temp_C", 2}, {"duty", nullptr}}));
    IntakeDialog other(captureField(), "c.csv", "p,q\n0,30\n1,31\n");
    QVERIFY(!problem(other).isEmpty());
  }

  void enterTakesInWhatWasRecognised() {
    IntakeDialog dialog(captureField(), "a.csv", "time_s,temp_C\n0,20\n1,21\n");
    dialog.show();
    QVERIFY(QTest::qWaitForWindowActive(&dialog));
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(QApplication::focusWidget(), find<QPushButton>(dialog, "takeInButton"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QCOMPARE(dialog.result(), static_cast<int>(QDialog::Accepted));
  }

  void anotherDecimalSignKeepsTheColumns() {
    IntakeDialog dialog(captureField(), "a.csv", "a;b\n0;20,5\n1;21,5\n2;22,5\n");
    choose(find<QComboBox>(dialog, "timeSColumnComboBox"), 1);
    choose(find<QComboBox>(dialog, "tempCColumnComboBox"), 2);
    QVERIFY(canTakeIn(dialog));
    auto* sign = find<QComboBox>(dialog, "decimalSignComboBox");
    choose(sign, 0);
    QCOMPARE(find<QComboBox>(dialog, "tempCColumnComboBox")->currentIndex(), 2);
    choose(sign, 1);
    QCOMPARE(dialog.reference()["columns"], (Json{{"time_s", 1}, {"temp_C", 2}, {"duty", nullptr}}));
    QVERIFY(canTakeIn(dialog));
  }

  void aColumnLeftOutStaysLeftOut() {
    IntakeDialog dialog(captureField(), "a.csv", "time_s;temp_C;duty\n0;20,5;0\n1;21,5;1\n2;22,5;1\n");
    auto* duty = find<QComboBox>(dialog, "dutyColumnComboBox");
    QCOMPARE(duty->currentIndex(), 3);
    choose(duty, 0);
    auto* sign = find<QComboBox>(dialog, "decimalSignComboBox");
    choose(sign, 0);
    choose(sign, 1);
    QCOMPARE(duty->currentIndex(), 0);
    QVERIFY(canTakeIn(dialog));
    QVERIFY(dialog.reference()["columns"]["duty"].is_null());
  }

  void neededColumnsOfATableSaySo() {
    IntakeDialog dialog(tableField(), "a.csv", "time_s\ttemp_C\n0\t20\n1\t21\n");
    QStringList labels;
    for (const auto* label : dialog.findChildren<QLabel*>()) {
      labels << label->text();
    }
    QVERIFY(labels.contains("temperature"));
    QVERIFY(labels.contains("duty (if there)"));
  }

  void fallingPositionsBeginAtTheBack() {
    IntakeDialog dialog(gridField(), "a.txt", "# x 0..100, y 50..0\n1 2 3\n4 5 6\n");
    QVERIFY(canTakeIn(dialog));
    auto* begins = find<QComboBox>(dialog, "backRowFirstComboBox");
    QCOMPARE(begins->currentText(), QString("at the back"));
    QCOMPARE(memberOf(dialog.value(), "z"), (Json{{4.0, 5.0, 6.0}, {1.0, 2.0, 3.0}}));
    choose(begins, 0);
    QTRY_COMPARE(memberOf(dialog.value(), "z"), (Json{{1.0, 2.0, 3.0}, {4.0, 5.0, 6.0}}));
    QCOMPARE(begins->currentText(), QString("at the front"));
  }

  // A list that falls says itself where the text begins; one that rises leaves that to the user.
  void risingPositionsKeepTheTurnThatWasChosen() {
    IntakeDialog dialog(gridField(), "a.txt", "1 2 3\n4 5 6\n");
    auto* y = find<QLineEdit>(dialog, "yLineEdit");
    auto* begins = find<QComboBox>(dialog, "backRowFirstComboBox");
    const auto enter = [](QLineEdit* line, const char* text) {
      line->selectAll();
      QTest::keyClicks(line, text);
      QTest::keyClick(line, Qt::Key_Return);
    };
    enter(find<QLineEdit>(dialog, "xLineEdit"), "0..100");
    enter(y, "50 0");
    QCOMPARE(begins->currentText(), QString("at the back"));
    enter(y, "0 50");
    QCOMPARE(begins->currentText(), QString("at the front"));
    QTRY_COMPARE(memberOf(dialog.value(), "z"), (Json{{1.0, 2.0, 3.0}, {4.0, 5.0, 6.0}}));
    choose(begins, 1);
    enter(y, "0 60");
    QCOMPARE(begins->currentText(), QString("at the back"));
    QTRY_COMPARE(memberOf(dialog.value(), "z"), (Json{{4.0, 5.0, 6.0}, {1.0, 2.0, 3.0}}));
  }

  void faultsAreOneSentence_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addRow("empty") << QByteArray();
    QTest::addRow("binary") << QByteArray("\x01\x02\x00\x03garbage", 11);
    QTest::addRow("words") << QByteArray("time_s,temp_C\n0,20\n1,warm\n2,22\n");
    QTest::addRow("backwards") << QByteArray("time_s,temp_C\n0,20\n2,21\n1,22\n");
    QTest::addRow("ragged") << QByteArray("time_s,temp_C\n0,20\n1\n2,22,5\n");
  }
  void faultsAreOneSentence() {
    QFETCH(QByteArray, text);
    IntakeDialog dialog(captureField(), "a.csv", text.toStdString());
    QVERIFY(problem(dialog).size() > 20);
    QVERIFY(!find<QPushButton>(dialog, "takeInButton")->isEnabled());
  }

  // Four samples, one of them a quarter of full scale.
  void aSoundFileNeedsNoColumns() {
    Field field = captureField();
    field.columns = {column("time_s", "time", "s", true), column("level", "level", "1", true)};
    fettle::tests::WaveFile file;
    file.samples = {{0, 0.25, 0, -0.5}};
    IntakeDialog dialog(field, "a.wav", file.bytes());
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(dialog.reference(), (Json{{"file", "a.wav"}, {"rows", 4}}));
    const auto* rows = dialog.findChild<QTableWidget*>("previewTableWidget");
    QVERIFY(!rows->isHidden());
    QCOMPARE(rows->rowCount(), 4);
    QCOMPARE(rows->item(1, 1)->text(), QString("0.25"));
    QString words;
    for (const auto* label : dialog.findChildren<QLabel*>()) {
      words += label->text();
    }
    QVERIFY2(words.contains("8000 samples a second, channels: 1"), qPrintable(words));
    const auto capture = readBack(field, dialog.reference(), file.bytes());
    QVERIFY(capture.has_value());
    QCOMPARE((*capture)->column("level"), (std::vector<double>{0, 0.25, 0, -0.5}));
    IntakeDialog broken(field, "a.wav", file.bytes().substr(0, 46));
    QVERIFY(problem(broken).contains("ends early"));
    IntakeDialog notWanted(captureField(), "a.wav", file.bytes());
    QVERIFY(problem(notWanted).contains("sound file"));
  }

  void tableBecomesRows() {
    IntakeDialog dialog(tableField(), "a.csv", "time_s\ttemp_C\n0\t20\n1\t21\n");
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(dialog.value(),
             (Json{{{"time_s", 0.0}, {"temp_C", 20.0}}, {{"time_s", 1.0}, {"temp_C", 21.0}}}));
  }

  void gridIsTurned() {
    IntakeDialog dialog(gridField(), "a.txt", "1 2 3\n4 5 6\n");
    QVERIFY2(!problem(dialog).isEmpty(), "positions are missing");
    auto* x = find<QLineEdit>(dialog, "xLineEdit");
    auto* y = find<QLineEdit>(dialog, "yLineEdit");
    const auto enter = [](QLineEdit* line, const char* text) {
      line->selectAll();
      QTest::keyClicks(line, text);
      QTest::keyClick(line, Qt::Key_Return);
    };
    enter(x, "0..100");
    enter(y, "0 50");
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(
        dialog.value(),
        (Json{{"x", {0.0, 50.0, 100.0}}, {"y", {0.0, 50.0}}, {"z", {{1.0, 2.0, 3.0}, {4.0, 5.0, 6.0}}}}));
    choose(find<QComboBox>(dialog, "backRowFirstComboBox"), 1);
    QTRY_COMPARE(memberOf(dialog.value(), "z"), (Json{{4.0, 5.0, 6.0}, {1.0, 2.0, 3.0}}));
    QCOMPARE(dialog.reference()["back_row_first"], Json(true));
    choose(find<QComboBox>(dialog, "backRowFirstComboBox"), 0);
    choose(find<QComboBox>(dialog, "columnsFirstComboBox"), 1);
    QVERIFY2(!problem(dialog).isEmpty(), "three positions, two columns");
    enter(x, "0 50");
    enter(y, "0..100");
    QTRY_COMPARE(memberOf(dialog.value(), "z"), (Json{{1.0, 4.0}, {2.0, 5.0}, {3.0, 6.0}}));
  }

  void positionsInACommentAreSuggested() {
    const std::string text = dataBytes("bed-grid.txt");
    IntakeDialog dialog(gridField(), "grid.txt", text);
    QVERIFY(canTakeIn(dialog));
    const Json grid = dialog.value();
    QCOMPARE(grid["x"].front(), Json(20.0));
    QCOMPARE(grid["x"].back(), Json(220.0));
    QCOMPARE(grid["y"].front(), Json(20.0));
    QCOMPARE(grid["z"].back()[0], Json(-0.056));  // 0.0006·20 − 0.0004·220 + 2e-6·100², first in the text
  }

  void largeCaptureIsReadInTheBackground() {
    const std::string text = dataBytes("sweep-y-decimal-comma.csv");
    Field field = captureField();
    field.columns = {column("time_s", "time", "s", true), column("ax", "acceleration x", "mm/s2", true),
                     column("ay", "acceleration y", "mm/s2", true),
                     column("az", "acceleration z", "mm/s2", false)};
    IntakeDialog dialog(field, "sweep.csv", text);
    QVERIFY2(!find<QPushButton>(dialog, "takeInButton")->isEnabled(), "the window does not wait for it");
    QVERIFY(canTakeIn(dialog));
    QCOMPARE(dialog.reference()["units"]["time_s"], Json("ms"));  // units row: [ms];[g];[g];[g]
    QCOMPARE(dialog.reference()["units"]["ax"], Json("gn"));
    QCOMPARE(dialog.reference()["rows"], Json(5120));
  }

  void readingCanBeStopped() {
    std::string text = "time_s,temp_C\n";
    for (int i = 0; i < 400000; ++i) {
      text += std::to_string(i) + ",20\n";
    }
    IntakeCheck check;
    std::optional<IntakeOutcome> outcome;
    connect(&check, &IntakeCheck::finished, this, [&](const IntakeOutcome& o) { outcome = o; });
    check.start(captureField(), Json{{"file", "a.csv"}}, std::make_shared<const std::string>(text));
    check.cancel();
    QTRY_VERIFY_WITH_TIMEOUT(outcome.has_value(), 20000);
    QVERIFY(outcome->cancelled);
  }
};

FETTLE_TEST(TestIntakeDialog)
#include "test_intake_dialog.moc"
