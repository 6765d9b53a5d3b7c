#include <QTest>

#include "core/intake/clock_time.h"
#include "core/intake/file_bytes.h"
#include "core/intake/table_preview.h"
#include "core/intake/utf8.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Expected values: what the small texts say, by inspection.
class TestTablePreview : public QObject {
  Q_OBJECT

  std::vector<WantedColumn> m_wanted = {{"time_s", "time", "s", true, false, {}},
                                        {"ax", "acceleration in x", "mm/s2", true, false, {}}};

 private slots:
  void showsWhatADialogNeeds() {
    const auto preview =
        previewTable("bench log\n# front\ntime [ms];ax\n0;1,5\n# knock\n1;one\n2;2\n", m_wanted, {}, {}, 2);
    QVERIFY2(preview.has_value(), preview ? "" : preview.error().sentence.c_str());
    QCOMPARE(preview->skipped, (std::vector<string>{"bench log"}));
    QCOMPARE(preview->comments, (std::vector<string>{"front"}));
    QCOMPARE(preview->format.decimalSign, ',');
    QCOMPARE(preview->heads[0].header, string("time [ms]"));
    QCOMPARE(preview->rows, (std::vector<std::vector<string>>{{"0", "1,5"}, {"1", "one"}}));
    QCOMPARE(preview->rowLines, (std::vector<std::size_t>{4, 6}));
    QCOMPARE(preview->suggested, (std::vector<ColumnMatch>{{"time_s", 0, "ms"}, {"ax", 1, "mm/s2"}}));
  }

  void sameShapeSameSignature() {
    const auto signature = [&](const string& text) {
      const auto preview = previewTable(text, m_wanted);
      return preview ? shapeSignature(preview->format, preview->heads) : string();
    };
    const string base = signature("t,x\n0,1\n1,2\n");
    QVERIFY(!base.empty());
    QCOMPARE(signature("# note\nt,x\n5,6\n7,8\n9,10\n"), base);
    QVERIFY(signature("t,y\n0,1\n1,2\n") != base);
    QVERIFY(signature("t;x\n0;1\n1;2\n") != base);
    QVERIFY(signature("t,x\nms,g\n0,1\n1,2\n") != base);
    QVERIFY(signature("t,x,\n0,1,2\n1,2,3\n") != base);
    QVERIFY(signature("t,x\n10:00:00,1\n10:00:01,2\n") != base);
  }

  void refusesWhatIsNoTable() { QVERIFY(!previewTable("words\n", m_wanted).has_value()); }

  void clockTimes() {
    QCOMPARE(clockTimeFromText("14:05:00.5", '.').value(), 50700.5);
    QCOMPARE(clockTimeFromText(" 9:05 ", '.').value(), 32700.0);
    QCOMPARE(clockTimeFromText("14:05:00,25", ',').value(), 50700.25);
    for (const char* text : {"14", "14:5", "14:60", "14:05:60", "14:05:", "14:05:00.", "14:05:00,5",
                             "114:05:00", "14:05:00.5x", ":05:00", "-1:05:00", "14:05:000", ""}) {
      QVERIFY2(!clockTimeFromText(text, '.'), text);
    }
  }

  void foreignTextIsFitForSentences() {
    QCOMPARE(shownText("a\tb\x01"), string("a b "));
    QCOMPARE(shownText("20 \xB0"
                       "C"),
             string("20 \u00b0C"));
    QCOMPARE(shownText(string(50, 'z')), string(40, 'z') + "\u2026");
    QCOMPARE(validUtf8("\u00b0C"), string("\u00b0C"));
  }

  void missingFileIsOneSentence() {
    const auto bytes = readFileBytes("no-such-folder/no-such-file.csv");
    QVERIFY(!bytes.has_value());
    QVERIFY(bytes.error().sentence.find("no-such-file.csv") != string::npos);
    QVERIFY(!readFileBytes(FETTLE_SOURCE_DIR).has_value());
    QVERIFY(readFileBytes(FETTLE_SOURCE_DIR "/LICENSE").value().size() > 1000);
  }
};

FETTLE_TEST(TestTablePreview)
#include "test_table_preview.moc"
