#include <QTest>

#include "core/intake/detect_format.h"
#include "core/intake/text_table.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Expected values: what the small texts say, by inspection.
class TestTextTable : public QObject {
  Q_OBJECT

  static Intake<TextTable> read(const string& text, const ReadOptions& options = {}) {
    const auto format = detectFormat(text);
    return format ? readTable(text, *format, options) : tl::unexpected(format.error());
  }

 private slots:
  void readsColumnsHeadersUnitsAndLines() {
    const auto table = read(
        "# run 3\nZeit;ax\r\n[ms];[g]\r\n\r\n5000,5;-0,25\r\n# "
        "pause\r\n5001;+1,5e1\r\n;\r\n5002;\u22122\r\n");
    QVERIFY2(table.has_value(), table ? "" : table.error().sentence.c_str());
    QCOMPARE(table->rows(), std::size_t(3));
    QCOMPARE(table->columns.size(), std::size_t(2));
    QCOMPARE(table->columns[0].header, string("Zeit"));
    QCOMPARE(table->columns[1].unit, string("[g]"));
    QCOMPARE(table->columns[0].values, (std::vector<double>{5000.5, 5001, 5002}));
    QCOMPARE(table->columns[1].values, (std::vector<double>{-0.25, 15, -2}));
    QCOMPARE(table->lines.lineOf(0), std::size_t(5));
    QCOMPARE(table->lines.lineOf(1), std::size_t(7));
    QCOMPARE(table->lines.lineOf(2), std::size_t(9));
    QCOMPARE(table->lines.lineOf(3), std::size_t(0));
  }

  void fastAndCarefulRowsAgree() {
    const auto plain = read("t,x\n0,1.5\n1,-2\n2,3\n");
    const auto quoted = read("t,x\n\"0\",\"1.5\"\n 1 , -2\n\"2\",3,\n");
    QVERIFY(plain && quoted);
    QCOMPARE(quoted->columns[0].values, plain->columns[0].values);
    QCOMPARE(quoted->columns[1].values, plain->columns[1].values);
  }

  void readsEveryLineEnd() {
    for (const string end : {"\n", "\r\n", "\r"}) {
      const auto table = read("t,x" + end + "0,1" + end + "1,2" + end + "2,3");
      QVERIFY(table.has_value());
      QCOMPARE(table->columns[1].values, (std::vector<double>{1, 2, 3}));
      QCOMPARE(table->lines.lineOf(2), std::size_t(4));
    }
  }

  void readsUtf16() {
    const string text(
        "\xFF\xFEt\0,\0x\0\n\0"
        "0\0,\0"
        "7\0\n\0",
        18);
    const auto table = read(text);
    QVERIFY(table.has_value());
    QCOMPARE(table->columns[1].values, (std::vector<double>{7}));
  }

  void keepsADegreeSignOfOneByte() {
    const auto table = read(
        "t,temp [\xB0"
        "C]\n0,20.5\n");
    QVERIFY(table.has_value());
    QCOMPARE(table->columns[1].header, string("temp [\u00b0C]"));
  }

  void readsClockTimesPastMidnight() {
    const auto table = read("clock;temp\n23:59:59,0;1,5\n23:59:59,5;1\n00:00:00,5;1\n0:00:01;1\n");
    QVERIFY2(table.has_value(), table ? "" : table.error().sentence.c_str());
    QCOMPARE(table->columns[0].values, (std::vector<double>{0, 0.5, 1.5, 2}));
  }

  void readsColumnsOfWords() {
    const auto table = read("belt,frequency\n\"left, front\",80.5\nright,82\n");
    QVERIFY(table.has_value());
    QCOMPARE(table->columns[0].words, (std::vector<string>{"left, front", "right"}));
    QCOMPARE(table->columns[1].values, (std::vector<double>{80.5, 82}));
  }

  void notesBlankCellsWhereAllowed() {
    const string text = "t,x\n0,1\n1,\n2,3\n";
    QVERIFY(!read(text).has_value());
    const auto table = read(text, {true, {}});
    QVERIFY(table.has_value());
    QCOMPARE(table->columns[1].blankRows, (std::vector<std::size_t>{1}));
    QCOMPARE(table->columns[1].values, (std::vector<double>{1, 0, 3}));
  }

  void refuses_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("sentence");
    const auto row = [](const char* name, const char* text, const char* sentence) {
      QTest::newRow(name) << QByteArray(text) << QByteArray(sentence);
    };
    row("a word", "t,x\n0,1\n0.1,one\n0.2,2\n",
        "Line 3, column 2 (x): \"one\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("a word, decimal comma", "t;x\n0;1,5\n0,1;1.5\n",
        "Line 3, column 2 (x): \"1.5\" is not a number; digits with a decimal comma are needed, such as "
        "12,5.");
    row("not a number", "t,x\n0,1\n0.1,NaN\n0.2,2\n",
        "Line 3, column 2 (x): \"NaN\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("not a number without header", "0,1\n0.1,-inf\n0.2,2\n",
        "Line 2, column 2: \"-inf\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("a column of not-a-number", "t,x\n0,nan\n0.1,nan\n",
        "Line 2, column 2 (x): \"nan\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("too large", "t,x\n0,1\n1,1e400\n2,2\n",
        "Line 3, column 2 (x): \"1e400\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("an empty cell", "t,x,y\n0,1,2\n0.1,,2\n", "Line 3, column 2 (x) is empty; a number is needed.");
    row("too few cells", "t,x,y\n0,1,2\n0.1,2\n0.2,1,2\n",
        "Line 3 has 2 cells where the table has 3 columns; every row needs the same number.");
    row("too many cells", "t,x\n0,1\n0.1,2,3\n",
        "Line 3 has 3 cells where the table has 2 columns; every row needs the same number.");
    row("cut off", "t,x,y\n0,1,2\n0.1,2,3\n0.2,1",
        "Line 4, the last, has 2 cells where the table has 3 columns; the text seems to be cut off there, "
        "complete or remove the line.");
    row("every row shorter than the header", "t,x,y\n0,1\n0.1,2\n",
        "Line 2 has 2 cells where the table has 3 columns; every row needs the same number.");
    row("open quotation mark", "t,x\n0,1\n\"0.1,2\n0.2,3\n",
        "Line 3 has a quotation mark that is not closed on the same line; close or remove it.");
    row("bad clock time", "clock,x\n10:00:00,1\n10:61:00,2\n10:00:02,3\n",
        "Line 3, column 1 (clock): \"10:61:00\" is not a clock time; hours, minutes and seconds are "
        "needed, such "
        "as 14:05:00.5.");
    row("a number among clock times", "clock,x\n10:00:00,1\n12,2\n10:00:02,3\n",
        "Line 3, column 1 (clock): \"12\" is not a clock time; hours, minutes and seconds are needed, such "
        "as "
        "14:05:00.5.");
    row("a row of words among the rows", "t,x\n0,1\nstopped,here\n1,2\n",
        "Line 3, column 1 (t): \"stopped\" is not a number; digits with a decimal point are needed, such "
        "as "
        "12.5.");
    row("words at once", "t,x\nzero,one\n0.1,2\n0.2,3\n",
        "Line 2, column 1 (t): \"zero\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("number run together with words", "t,x\n0,1\n1,12mm\n2,3\n",
        "Line 3, column 2 (x): \"12mm\" is not a number; digits with a decimal point are needed, such as "
        "12.5.");
    row("grouped thousands", "t;x\n0;1.5\n1;1,234.5\n2;2.5\n",
        "Line 3, column 2 (x): \"1,234.5\" is not a number; digits with a decimal point are needed, such "
        "as "
        "12.5.");
  }
  void refuses() {
    QFETCH(QByteArray, text);
    QFETCH(QByteArray, sentence);
    const auto table = read(text.toStdString());
    QVERIFY(!table.has_value());
    QCOMPARE(table.error().sentence, sentence.toStdString());
    QVERIFY(table.error().line > 0);
    QVERIFY(!table.error().cancelled);
  }

  void shortensRubbishInSentences() {
    const auto table = read("t,x\n0,1\n1," + string(100000, 'z') + "\n2,3\n");
    QVERIFY(!table.has_value());
    QVERIFY(table.error().sentence.size() < 200);
  }

  void refusesAHeaderWithoutRows() {
    TextFormat format;
    format.header = HeaderPlace::row;
    format.columns.resize(2);
    QVERIFY(readTable("t,x\n", format).error().sentence.find("no row") != string::npos);
    QVERIFY(!readTable("t,x\n0,1\n", TextFormat()).has_value());
    QVERIFY(!readTable("", format).has_value());
  }

  void tellsProgressAndStops() {
    string text = "t,x\n";
    for (int i = 0; i < 100000; ++i) {
      text += std::to_string(i) + ",1.5\n";
    }
    int calls = 0;
    double last = 0.0;
    const auto whole = read(text, {false, [&](double done) {
                                     ++calls;
                                     const bool grows = done > last && done <= 1.0;
                                     last = done;
                                     return grows;
                                   }});
    QVERIFY(whole.has_value());
    QCOMPARE(whole->rows(), std::size_t(100000));
    QCOMPARE(whole->columns[0].values.back(), 99999.0);
    QVERIFY(calls >= 3);
    const auto stopped = read(text, {false, [](double) { return false; }});
    QVERIFY(!stopped.has_value());
    QVERIFY(stopped.error().cancelled);
  }
};

FETTLE_TEST(TestTextTable)
#include "test_text_table.moc"
