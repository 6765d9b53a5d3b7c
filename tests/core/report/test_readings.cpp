#include <QTest>

#include "core/report/report_readings.h"
#include "core/report/report_words.h"
#include "tests/core/report/small_history.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected: by hand from the inputs; the wording is this program's own.
class TestReadings : public QObject {
  Q_OBJECT

  static Field field(const std::string& key, const std::string& label, FieldKind kind,
                     const std::string& unit = "") {
    Field made;
    made.key = key;
    made.label = label;
    made.kind = kind;
    made.unit = unit;
    return made;
  }

  static Field measured(const std::string& key, const std::string& label, const Instrument& instrument) {
    Field made = field(key, label, FieldKind::number, instrument.unit);
    made.instrument = instrument;
    return made;
  }

  static Step stepOf(const std::vector<Field>& fields) {
    Step step;
    step.fields = fields;
    return step;
  }

 private slots:
  void singleFieldsWithUnitsChoicesAndDefaults() {
    Field way = field("way", "Way", FieldKind::choice);
    way.choices = {{"up", "upwards"}, {"down", "downwards"}};
    Field soak = field("soak", "Soak", FieldKind::number, "s");
    soak.fallback = 60;
    Field hidden = field("hidden", "Hidden", FieldKind::number);
    hidden.fallback = 1;
    hidden.condition = Condition{"way", {"up"}};
    const Step step = stepOf({field("rate", "Rate", FieldKind::number, "mm3/s"), way, soak, hidden,
                              field("dry", "Dry", FieldKind::yesNo)});
    const Json inputs{{"rate", -2.5}, {"way", "down"}, {"dry", true}};
    QCOMPARE(asText(reportReadings(step, inputs)),
             QString("#### Entered\nRate: −2.5 mm³/s\nWay: downwards\nSoak: 60 s (default)\nDry: yes\n"));
  }

  void rowsAreStruckAndNumberedAsTyped() {
    Field table = field("rows", "Rows", FieldKind::table);
    table.columns = {field("a", "A", FieldKind::number, "C"), field("b", "B", FieldKind::number),
                     field("word", "Word", FieldKind::text)};
    const Json inputs{
        {"rows", {{{"a", 1}, {"word", "x"}}, Json::object(), {{"a", 3}, {"excluded", "draught"}}}}};
    QCOMPARE(
        asText(reportReadings(stepOf({table}), inputs)),
        QString("#### Rows\n| #> | A, °C> | Word | Left out because\n- 1 | 1 | x | .\nstruck 3 | 3 | . | "
                "draught\n"));
  }

  void gridsLieAsTheBedDoes() {
    const Field grid = field("grid", "Heights", FieldKind::grid, "mm");
    const Json inputs{{"grid", {{"x", {20, 10}}, {"y", {5, 15}}, {"z", {{1, 2}, {3, nullptr}}}}}};
    QCOMPARE(asText(reportReadings(stepOf({grid}), inputs)),
             QString("#### Heights, mm\n| y\u00a0\\\u00a0x, mm> | 10> | 20>\n- 15 | . | 3\n- 5 | 2 | 1\n"));
  }

  void checklistsSayWhatIsOpen() {
    Field list = field("list", "Safety", FieldKind::checklist);
    list.choices = {{"earth", "Earth bond"}, {"fuse", "Fuse"}, {"stop", "Emergency stop"}};
    const Json inputs{{"list",
                       {{{"item", "earth"}, {"ok", true}},
                        {{"item", "fuse"}, {"ok", false}, {"remark", "6 A found"}},
                        {{"item", "stop"}}}}};
    QCOMPARE(
        asText(reportReadings(stepOf({list}), inputs)),
        QString("#### Safety\n| Item | In order | Remark\n- Earth bond | ✓ yes | .\n- Fuse | ✕ no | 6 A "
                "found\n- Emergency stop | – open | .\n"));
  }

  void filesAreListedOnceWithTheirHash() {
    Field table = field("captures", "Captures", FieldKind::table);
    table.columns = {field("axis", "Axis", FieldKind::text),
                     field("capture", "Capture", FieldKind::capture)};
    const Json file{{"file", "x.csv"}, {"sha256", "00ff"}};
    const Json inputs{{"captures",
                       {{{"axis", "x"}, {"capture", file}},
                        {{"axis", "y"}, {"capture", file}},
                        {{"axis", "z"}, {"capture", {{"file", "z.csv"}}}}}}};
    const QString text = asText(reportReadings(stepOf({table}), inputs));
    QVERIFY2(
        text.endsWith("#### Files read\n| File | SHA-256 of its content\n- x.csv | 00ff\n- z.csv | not "
                      "known\n"),
        qPrintable(text));
    QVERIFY(text.contains("- 2 | y | x.csv\n"));
  }

  void aTableThatIsAFile() {
    Field table = field("rows", "Rows", FieldKind::table);
    table.columns = {field("a", "A", FieldKind::number, "s"), field("b", "B", FieldKind::number, "C")};
    const Json inputs{{"rows", {{"file", "log.csv"}, {"sha256", "ab"}, {"constants", {{"b", 25}}}}}};
    QCOMPARE(asText(reportReadings(stepOf({table}), inputs)),
             QString("#### Rows\nRead from log.csv.\nB: 25 °C\n#### Files read\n| File | SHA-256 of its "
                     "content\n- log.csv | ab\n"));
  }

  void instrumentsAreThoseChosenElseTheUsual() {
    Field table = field("rows", "Rows", FieldKind::table);
    table.columns = {
        measured("a", "A", {"rule", 0.5, 0.25, 0, "mm"}), measured("b", "B", {"rule", 0.5, 0.25, 0, "mm"}),
        measured("c", "C", {"scale", 0.01, 0.02, 0.005, "g"}), measured("d", "D", {"exact", 0, 0, 0, "mm"}),
        measured("e", "E", {"rule", 0.5, 0.25, 0, "mm"})};
    const Json rows = Json::array({{{"a", 1}, {"b", 2}, {"c", 3}, {"d", 4}}});
    const QString usual = asText(reportReadings(stepOf({table}), {{"rows", rows}}));
    QVERIFY2(usual.endsWith("#### Instruments\n| Readings | Instrument | Resolution> | Limit of error ±>\n"
                            "- A, B | rule | 0.5 mm | 0.25 mm\n"
                            "- C | scale | 0.01 g | 0.02 g and 0.5 % of the reading\n"),
             qPrintable(usual));
    const Json chosen{{"b", {{"name", "caliper 3"}, {"r", 0.01}, {"e", 0.03}}}};
    const QString text = asText(reportReadings(stepOf({table}), {{"rows", rows}, {"instruments", chosen}}));
    QVERIFY2(text.contains("- A | rule | 0.5 mm | 0.25 mm\n- B | caliper 3 | 0.01 mm | 0.03 mm\n"),
             qPrintable(text));
  }

  void limitsInWords() {
    QCOMPARE(toleranceText({std::nullopt, 0.1}, "mm"), std::string("≤ 0.1 mm"));
    QCOMPARE(toleranceText({0.98, 1.02}, "1"), std::string("0.98 … 1.02"));
    QCOMPARE(toleranceText({}, "mm"), std::string());
  }
};

FETTLE_TEST(TestReadings)
#include "test_readings.moc"
