#include <QTest>

#include "core/intake/detect_format.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Expected values: how each small text is written, by inspection. One nasty case per row.
class TestDetectFormat : public QObject {
  Q_OBJECT

  static string described(const TextFormat& format) {
    string out;
    out += format.delimiter == Delimiter::comma       ? "comma"
           : format.delimiter == Delimiter::semicolon ? "semicolon"
           : format.delimiter == Delimiter::tab       ? "tab"
                                                      : "blanks";
    out += string(" ") + format.decimalSign;
    out += format.header == HeaderPlace::row       ? " row"
           : format.header == HeaderPlace::comment ? " comment"
                                                   : " none";
    out += format.unitsRow ? " units" : "";
    out += format.skippedLines > 0 ? " skip" + std::to_string(format.skippedLines) : "";
    out += " ";
    for (const auto kind : format.columns) {
      out += kind == ColumnKind::number ? 'n' : kind == ColumnKind::clock ? 'c' : 'w';
    }
    return out;
  }

 private slots:
  void detects_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("format");
    const auto row = [](const char* name, const QByteArray& text, const char* format) {
      QTest::newRow(name) << text << QByteArray(format);
    };
    row("commas", "t,x\n0,1.5\n1,2.5\n", "comma . row nn");
    row("byte order mark", "\xEF\xBB\xBFt,x\n0,1.5\n", "comma . row nn");
    row("windows line ends", "t;x\r\n0;1,5\r\n1;2,5\r\n", "semicolon , row nn");
    row("old line ends", "t;x\r0;1,5\r1;2,5\r", "semicolon , row nn");
    row("no line end at the end", "t,x\n0,1.5", "comma . row nn");
    row("semicolons and commas", "15,0;15,0;-0,024\n69,0;15,0;-0,034\n", "semicolon , none nnn");
    row("tabs and commas", "t\tx\n0\t1,5\n1\t2,5\n", "tab , row nn");
    row("tabs and points", "0\t1.5\n1\t2.5\n", "tab . none nn");
    row("tabs, words with blanks", "t\tplace\n0\tfront left\n1\tback right\n", "tab . row nw");
    row("blanks", "0  1.5 2\n1 2.5   3\n", "blanks . none nnn");
    row("blanks and tabs mixed", "0 \t1.5 2\n1 2.5 \t 3\n", "blanks . none nnn");
    row("blanks and commas", "0 1,5\n1 2,5\n", "blanks , none nn");
    row("blank behind each comma", "t, x, y\n0, 1.5, 2\n1, 2.5, 3\n", "comma . row nnn");
    row("whole numbers", "1,2\n3,4\n", "comma . none nn");
    row("one column", "1.5\n2.5\n", "tab . none n");
    row("one column of decimal commas, the header says so", "height\n0,5\n1,5\n", "tab , row n");
    row("one column of decimal commas, a zero behind the comma says so", "0,05\n0,07\n", "tab , none n");
    row("units row", "t;x\n[ms];[g]\n0;1,5\n", "semicolon , row units nn");
    row("units row without brackets", "t,x\nms,mm/s2\n0,1.5\n", "comma . row units nn");
    row("units row alone", "[ms],[g]\n0,1.5\n", "comma . none units nn");
    row("comment as header", "# taken on Monday\n# t,x\n0,1.5\n1,2.5\n", "comma . comment nn");
    row("comment as header, parted by blanks", "% t x\n0,1.5\n1,2.5\n", "comma . comment nn");
    row("comments as header and units", "# t,x\n# ms,g\n0,1.5\n1,2.5\n", "comma . comment units nn");
    row("comment as header above a units row", "# t,x\nms,g\n0,1.5\n1,2.5\n", "comma . comment units nn");
    row("comment of another length", "# the left one, cold, twice\n0,1.5\n1,2.5\n", "comma . none nn");
    row("comment between header and rows", "t,x\n// cold\n0,1.5\n", "comma . row nn");
    row("semicolon as comment mark", "; a, b\n0,1.5\n1,2.5\n", "comma . comment nn");
    row("semicolon as delimiter, first header empty", ";x\n0;1,5\n", "semicolon , row nn");
    row("lines above the table", "made at the bench\n\nserial 12 34\nt,x\n0,1.5\n1,2.5\n",
        "comma . row skip3 nn");
    row("quoted headers with delimiters in them", "\"t, s\",\"x, g\"\n0,1.5\n1,2.5\n", "comma . row nn");
    row("quoted decimal commas between commas", "\"t\",\"x\"\n\"0,5\",\"1,5\"\n\"1,5\",\"2,5\"\n",
        "comma , row nn");
    row("clock times", "clock,temp\n14:05:00.0,24.2\n14:05:00.5,24.3\n", "comma . row cn");
    row("clock times, decimal commas", "clock;temp\n14:05:00,5;24,2\n14:05:01,0;24,3\n",
        "semicolon , row cn");
    row("a delimiter at the end of each line", "t,x,\n0,1.5,\n1,2.5,\n", "comma . row nn");
    row("a delimiter at the end of each row only", "t,x\n0,1.5,\n1,2.5,\n", "comma . row nn");
    row("an empty last column with a header", "t,x,remark\n0,1.5,\n1,2.5,\n", "comma . row nnw");
    row("a short first row is a row", "t,x,y\n0,1.5\n1,2.5,3\n2,3.5,4\n", "comma . row nnn");
    row("a row of not-a-number is a row", "nan,nan\n1,2.5\n2,3.5\n", "comma . none nn");
    row("one word in a column of numbers", "t,x\n0,1.5\n1,one\n", "comma . row nn");
    row("header in UTF-16",
        QByteArray("\xFF\xFEt\0,\0x\0\n\0"
                   "0\0,\0"
                   "1\0\n\0",
                   18),
        "comma . row nn");
    row("UTF-16, other byte order, no mark",
        QByteArray("\0t\0,\0x\0\n\0"
                   "0\0,\0"
                   "1\0\n",
                   16),
        "comma . row nn");
  }
  void detects() {
    QFETCH(QByteArray, text);
    QFETCH(QByteArray, format);
    const auto found = detectFormat(text.toStdString());
    QVERIFY2(found.has_value(), found ? "" : found.error().sentence.c_str());
    QCOMPARE(described(*found), format.toStdString());
  }

  void findsTheDecimalSignFarDown() {
    string text = "t;x\n";
    for (int i = 0; i < 5000; ++i) {
      text += std::to_string(i) + ";0\n";
    }
    text += "5000;0,5\n5001;0\n";
    for (int i = 5002; i < 20000; ++i) {
      text += std::to_string(i) + ";0\n";
    }
    QCOMPARE(described(detectFormat(text).value()), string("semicolon , row nn"));
  }

  void obeysHints() {
    const string text = "made,here\n0,1\n2,3\n";
    FormatHints hints;
    hints.skippedLines = 1;
    QCOMPARE(described(detectFormat(text, hints).value()), string("comma . none skip1 nn"));
    hints = {};
    hints.delimiter = Delimiter::semicolon;
    QCOMPARE(described(detectFormat("0,5\n1,5\n", hints).value()), string("semicolon , none n"));
    hints.decimalSign = '.';
    QVERIFY(!detectFormat("0,5\n1,5\n", hints).has_value());
  }

  void refuses_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("says");
    const auto row = [](const char* name, const QByteArray& text, const char* says) {
      QTest::newRow(name) << text << QByteArray(says);
    };
    row("nothing", "", "no text");
    row("blanks only", " \r\n\t\n", "no text");
    row("byte order mark only", "\xEF\xBB\xBF", "no text");
    row("zeros", QByteArray("1,2\n\0\0\0", 7), "binary");
    row("control characters", "1,2\n\x01\x02\n", "binary");
    row("words only", "one,two\nthree,four\n", "No row of numbers");
    row("header only", "t,x\n", "No row of numbers");
    row("comments only", "# 1,2\n# 3,4\n", "No row of numbers");
  }
  void refuses() {
    QFETCH(QByteArray, text);
    QFETCH(QByteArray, says);
    const auto found = detectFormat(text.toStdString());
    QVERIFY(!found.has_value());
    QVERIFY2(found.error().sentence.find(says.toStdString()) != string::npos,
             found.error().sentence.c_str());
  }
};

FETTLE_TEST(TestDetectFormat)
#include "test_detect_format.moc"
