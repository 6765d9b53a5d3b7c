#include <QTest>

#include "core/intake/column_map.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Expected values: what the small texts say; standard gravity 9.80665 m/s² (ISO 80000-3).
class TestColumnMap : public QObject {
  Q_OBJECT

  std::vector<WantedColumn> m_acceleration = {{"time_s", "time", "s", true, false, {}},
                                              {"ax", "acceleration in x", "mm/s2", true, false, {}},
                                              {"ay", "acceleration in y", "mm/s2", true, false, {}}};
  std::vector<WantedColumn> m_heater = {{"time_s", "time", "s", true, false, {}},
                                        {"temp_C", "temperature", "C", true, false, {}},
                                        {"duty", "duty", "1", false, false, {}},
                                        {"target_C", "target", "C", false, false, {}}};

  static string described(const Intake<std::vector<ColumnMatch>>& matches) {
    if (!matches) {
      return matches.error().sentence;
    }
    string out;
    for (const auto& match : *matches) {
      out += (out.empty() ? "" : " ") + match.key + "=" + std::to_string(match.column + 1) + match.unit;
    }
    return out;
  }

  static std::vector<ColumnHead> heads(const QByteArray& text) {
    std::vector<ColumnHead> out;
    for (const auto& header : text.split('|')) {
      out.push_back({header.toStdString(), "", ColumnKind::number});
    }
    return out;
  }

 private slots:
  void recognisesHeaders_data() {
    QTest::addColumn<QByteArray>("headers");
    QTest::addColumn<bool>("heater");
    QTest::addColumn<QByteArray>("matches");
    const auto row = [](const char* headers, bool heater, const char* matches) {
      QTest::newRow(headers) << QByteArray(headers) << heater << QByteArray(matches);
    };
    row("time_s|ax|ay", false, "time_s=1s ax=2mm/s2 ay=3mm/s2");
    row("ay|ax|time_s", false, "time_s=3s ax=2mm/s2 ay=1mm/s2");
    row("time_s|ax_mm_s2|ay_m_s2", false, "time_s=1s ax=2mm/s2 ay=3m/s2");
    row("t[us]|x[mg]|y[mg]|z[mg]", false, "time_s=1us ax=2mgn ay=3mgn");
    row("Zeit|ax|ay", false, "time_s=1s ax=2mm/s2 ay=3mm/s2");
    row("Time (ms)|Acc X (g)|Acc Y (g)", false, "time_s=1ms ax=2gn ay=3gn");
    row("time / ms|AX|AY", false, "time_s=1ms ax=2mm/s2 ay=3mm/s2");
    row("ms|x|y", false, "time_s=1ms ax=2mm/s2 ay=3mm/s2");
    row("\u00b5s|Acceleration x|acceleration-y", false, "time_s=1us ax=2mm/s2 ay=3mm/s2");
    row("n|t|x|y", false, "time_s=2s ax=3mm/s2 ay=4mm/s2");
    row("seconds|temp|target", true, "time_s=1s temp_C=2C target_C=3C");
    row("clock|temperature (C)|output (%)", true, "time_s=1s temp_C=2C duty=3%");
    row("time_s|temp_C|duty|target_C", true, "time_s=1s temp_C=2C duty=3 1 target_C=4C");
    row("elapsed min|actual \u00b0C|setpoint \u00b0C|power %", true,
        "time_s=1min temp_C=2C duty=4% target_C=3C");
    row("t|T [K]", true, "time_s=1s temp_C=2K");
  }
  void recognisesHeaders() {
    QFETCH(QByteArray, headers);
    QFETCH(bool, heater);
    QFETCH(QByteArray, matches);
    auto found = described(matchColumns(heads(headers), heater ? m_heater : m_acceleration));
    QCOMPARE(QByteArray::fromStdString(found).replace("=31", "=3 1"), matches);
  }

  void comparesWordsOfKeysInGeneral() {
    const std::vector<WantedColumn> wanted = {{"flow_mm3_s", "flow", "mm3/s", true, false, {}},
                                              {"delivered", "delivered", "1", false, false, {}},
                                              {"mass_g", "mass", "g", false, false, {}},
                                              {"volume_mm3", "volume", "mm3", false, false, {}}};
    QCOMPARE(described(matchColumns(heads("flow mm3/s|mass g|commanded volume mm3"), wanted)),
             string("flow_mm3_s=1mm3/s mass_g=2g volume_mm3=3mm3"));
    const std::vector<WantedColumn> points = {{"x", "x", "mm", true, false, {}},
                                              {"y", "y", "mm", true, false, {}},
                                              {"z", "z", "mm", true, false, {}}};
    QCOMPARE(described(matchColumns(heads("x mm|y mm|height mm"), points)), string("x=1mm y=2mm z=3mm"));
    const std::vector<WantedColumn> drawn = {
        {"before_mm", "mark to inlet before", "mm", true, false, {"start"}}};
    QCOMPARE(described(matchColumns(heads("end|Start mm"), drawn)), string("before_mm=2mm"));
    QCOMPARE(described(matchColumns(heads("Mark to inlet, before|end"), drawn)), string("before_mm=1mm"));
  }

  void theUserOverridesEverything() {
    ColumnChoice choice;
    choice.columns = {{"time_s", "4"}, {"ax", "b"}, {"ay", "C [mg]"}};
    choice.units = {{"time_s", "us"}, {"ax", "g"}, {"ay", "m/s2"}};
    QCOMPARE(described(matchColumns(heads("time_s|B|c [mg]|ticks"), m_acceleration, choice)),
             string("time_s=4us ax=2gn ay=3m/s2"));
    choice = {};
    choice.columns = {{"duty", ""}};
    QCOMPARE(described(matchColumns(heads("time_s|temp_C|duty"), m_heater, choice)),
             string("time_s=1s temp_C=2C"));
  }

  void aHeaderThatIsANumberWinsOverTheNumber() {
    ColumnChoice choice;
    choice.columns = {{"time_s", "2"}};
    QCOMPARE(described(matchColumns(heads("2|temp"), m_heater, choice)), string("time_s=1s temp_C=2C"));
  }

  void refuses_data() {
    QTest::addColumn<QByteArray>("headers");
    QTest::addColumn<QByteArray>("columns");
    QTest::addColumn<QByteArray>("units");
    QTest::addColumn<QByteArray>("sentence");
    const auto row = [](const char* name, const char* headers, const char* columns, const char* units,
                        const char* sentence) {
      QTest::newRow(name) << QByteArray(headers) << QByteArray(columns) << QByteArray(units)
                          << QByteArray(sentence);
    };
    row("missing", "time_s|ax", "", "",
        "No column was recognised as ay (acceleration in y); name it so or say which one it is: 1 "
        "\"time_s\", 2 "
        "\"ax\".");
    row("no header", "||", "", "",
        "The table has no header; say which of its 3 columns is time_s, ax, ay, by number from 1.");
    row("not there", "time_s|ax|ay", "ax:left", "",
        "There is no column \"left\" to take ax from; the columns are 1 \"time_s\", 2 \"ax\", 3 \"ay\".");
    row("number too large", "time_s|ax|ay", "ax:4", "",
        "There is no column 4 to take ax from; columns are numbered 1 to 3.");
    row("number zero", "time_s|ax|ay", "ax:0", "",
        "There is no column 0 to take ax from; columns are numbered 1 to 3.");
    row("unknown key", "time_s|ax|ay", "aw:1", "",
        "\"aw\" is not a column asked for here; possible are time_s, ax, ay.");
    row("unknown key among units", "time_s|ax|ay", "", "aw:g",
        "\"aw\" is not a column asked for here; possible are time_s, ax, ay.");
    row("one column twice", "time_s|ax|ay", "ax:2 ay:2", "",
        "Column 2 is given both as ax and as ay; each needs a column of its own.");
    row("two alike", "time_s|ax|ax|ay", "", "",
        "More than one column may be ax: 2 \"ax\", 3 \"ax\"; say which one by its number from 1.");
    row("unknown unit", "time_s|ax|ay", "", "ax:counts",
        "The unit \"counts\" of ax is not known; possible are mm/s2, m/s2, gn, mgn.");
    row("unknown unit in a header", "time_s|ax [counts]|ay", "", "",
        "The unit \"counts\" of ax is not known; possible are mm/s2, m/s2, gn, mgn.");
    row("unit of another dimension", "time_s|ax|ay", "", "ax:V",
        "The unit \"V\" does not suit ax; possible are mm/s2, m/s2, gn, mgn.");
    row("column of another dimension", "time_s|x mm|ay", "ax:2", "ax:mm",
        "The unit \"mm\" does not suit ax; possible are mm/s2, m/s2, gn, mgn.");
    row("length is no acceleration", "time_s|x mm|ay", "", "",
        "No column was recognised as ax (acceleration in x); name it so or say which one it is: 1 "
        "\"time_s\", 2 "
        "\"x mm\", 3 \"ay\".");
    row("clock said of numbers", "time_s|ax|ay", "", "time_s:clock",
        "The column for time_s is said to hold clock times, but it holds plain numbers; say s, ms or us.");
  }
  void refuses() {
    QFETCH(QByteArray, headers);
    QFETCH(QByteArray, columns);
    QFETCH(QByteArray, units);
    QFETCH(QByteArray, sentence);
    ColumnChoice choice;
    for (const auto& [text, map] : {std::pair(columns, &choice.columns), std::pair(units, &choice.units)}) {
      for (const auto& pair : text.split(' ')) {
        if (!pair.isEmpty()) {
          (*map)[pair.split(':')[0].toStdString()] = pair.split(':')[1].toStdString();
        }
      }
    }
    QCOMPARE(described(matchColumns(heads(headers), m_acceleration, choice)), sentence.toStdString());
  }

  void suggestsWhatItCan() {
    QCOMPARE(described(suggestColumns(heads("time_s|ax|left"), m_acceleration)),
             string("time_s=1s ax=2mm/s2"));
    QVERIFY(suggestColumns(heads("||"), m_acceleration).empty());
    ColumnChoice inOrder;
    inOrder.inOrder = true;
    QCOMPARE(described(suggestColumns(heads("||"), m_acceleration, inOrder)),
             string("time_s=1s ax=2mm/s2 ay=3mm/s2"));
  }

  void convertsToTheWantedUnits() {
    const auto columns = readColumns("Zeit;ax;ay\n[ms];[g];[g]\n5000,5;0,5;-1\n5001;1;2\n", m_acceleration);
    QVERIFY2(columns.has_value(), columns ? "" : columns.error().sentence.c_str());
    QCOMPARE(columns->find("time_s")->values, (std::vector<double>{5.0005, 5.001}));
    QCOMPARE(columns->find("ax")->values, (std::vector<double>{4903.325, 9806.65}));
    QCOMPARE(columns->find("ay")->values, (std::vector<double>{-9806.65, 19613.3}));
    QVERIFY(columns->find("az") == nullptr);
    QCOMPARE(columns->lines.lineOf(1), std::size_t(4));
  }

  void percentBecomesAFraction() {
    const auto columns =
        readColumns("clock,temperature (C),output (%)\n14:00:00,20,0\n14:00:01,21,42\n", m_heater);
    QVERIFY(columns.has_value());
    QCOMPARE(columns->find("duty")->values, (std::vector<double>{0, 0.42}));
    QCOMPARE(columns->find("time_s")->values, (std::vector<double>{0, 1}));
  }

  void neverConvertsToInfinity() {
    const auto columns = readColumns("time_s,ax [g],ay\n0,1,1\n1,1e308,1\n2,1,1\n", m_acceleration);
    QVERIFY(!columns.has_value());
    QCOMPARE(columns.error().sentence, string("Line 3, column 2 (ax [g]) holds a number too large to "
                                              "convert; check the column and its unit."));
  }

  void refusesWordsWhereNumbersAreWanted() {
    ColumnChoice choice;
    choice.columns = {{"ax", "2"}};
    const auto columns = readColumns("time_s,side,ay\n0,left,1\n1,right,2\n", m_acceleration, choice);
    QCOMPARE(columns.error().sentence, string("Line 2, column 2 (side): the column for ax holds words such "
                                              "as \"left\"; numbers are needed."));
  }

  void theLineIsThatOfTheWord() {
    ColumnChoice choice;
    choice.columns = {{"ax", "2"}};
    ReadOptions blanks;
    blanks.blanksAllowed = true;
    const auto columns =
        readColumns("time_s,side,ay\n0,,1\n1,,2\n2,left,3\n", m_acceleration, choice, {}, blanks);
    QCOMPARE(columns.error().sentence, string("Line 4, column 2 (side): the column for ax holds words such "
                                              "as \"left\"; numbers are needed."));
  }

  void readsWantedWords() {
    const std::vector<WantedColumn> plucks = {{"belt", "belt", "", true, true, {}},
                                              {"frequency_hz", "frequency", "Hz", true, false, {}}};
    const auto named = readColumns("belt,frequency Hz\nleft,80\nright,82\n", plucks);
    QVERIFY(named.has_value());
    QCOMPARE(named->find("belt")->words, (std::vector<string>{"left", "right"}));
    const auto numbered = readColumns("belt,frequency_hz\n01,80\n02,82\n", plucks);
    QVERIFY(numbered.has_value());
    QCOMPARE(numbered->find("belt")->words, (std::vector<string>{"01", "02"}));
    QCOMPARE(numbered->find("frequency_hz")->values, (std::vector<double>{80, 82}));
  }

  void textWithoutHeaderNeedsNumbers() {
    const string text = "0\t1\t2\n1\t3\t4\n";
    QVERIFY(!readColumns(text, m_acceleration).has_value());
    ColumnChoice choice;
    choice.columns = {{"time_s", "1"}, {"ax", "3"}, {"ay", "2"}};
    choice.units = {{"ax", "g"}};
    const auto columns = readColumns(text, m_acceleration, choice);
    QVERIFY(columns.has_value());
    QCOMPARE(columns->find("ax")->values, (std::vector<double>{19613.3, 39226.6}));
  }
};

FETTLE_TEST(TestColumnMap)
#include "test_column_map.moc"
