#include <QTest>

#include "tests/support/test_main.h"
#include "ui/forms/field_value.h"
#include "ui/forms/grid_value.h"
#include "ui/forms/input_path.h"
#include "ui/forms/table_rows.h"

using namespace fettle;
using namespace fettle::ui;

// Edits of tables and grids as pure functions; the expected values are what the words of each test say.
namespace {

Field number(const char* key) {
  Field field;
  field.key = key;
  field.label = key;
  return field;
}

std::vector<const Field*> columns() {
  static const std::vector<Field> fields = [] {
    Field kind;
    kind.key = kind.label = "kind";
    kind.kind = FieldKind::choice;
    kind.choices = {{"tap", "Tap"}, {"sweep", "Sweep"}};
    Field positive = number("mass");
    positive.minimum = 0;
    return std::vector<Field>{number("flow"), positive, kind};
  }();
  return {&fields[0], &fields[1], &fields[2]};
}

const Json rows = {{{"flow", 1.0}, {"mass", 0.5}}, {{"flow", 2.0}}};

}  // namespace

class TestTableRows : public QObject {
  Q_OBJECT
 private slots:
  void cellsAndRows() {
    QCOMPARE(withCell(rows, 1, number("mass"), 0.7).rows, (Json{rows[0], {{"flow", 2.0}, {"mass", 0.7}}}));
    QCOMPARE(withCell(rows, 1, number("mass"), 0.7).what, QString("row 2, mass"));
    QCOMPARE(withCell(rows, 3, number("flow"), 4.0).rows,
             (Json{rows[0], rows[1], Json::object(), {{"flow", 4.0}}}));
    QCOMPARE(withoutCells(rows, {{1, "flow"}}).rows, Json{rows[0]});
    QCOMPARE(withRowInserted(rows, 1).rows, (Json{rows[0], Json::object(), rows[1]}));
    QCOMPARE(withoutRows(rows, {0}).rows, Json{rows[1]});
    QCOMPARE(withoutRows(rows, {0, 1}).what, QString("remove rows 1, 2"));
  }

  void exclusionKeepsTheRow() {
    const auto left = withExclusion(rows, {0}, " bumped ");
    QCOMPARE(left.what, QString("exclude row 1"));
    QCOMPARE(left.rows[0], (Json{{"flow", 1.0}, {"mass", 0.5}, {"excluded", "bumped"}}));
    QCOMPARE(exclusionOf(left.rows[0]), QString("bumped"));
    QCOMPARE(withExclusion(left.rows, {0}, {}).rows, rows);
    QCOMPARE(withExclusion(left.rows, {0}, {}).what, QString("include row 1"));
  }

  void valuesBecomeRows() {
    QCOMPARE(rowsOf({{"file", "a.csv"}}), Json::array());
    QCOMPARE(rowsOf({{"flow", 1.0}}), (Json{{{"flow", 1.0}}}));
    QCOMPARE(rowsOf({{{"flow", 1.0}}, Json::object(), Json()}), (Json{{{"flow", 1.0}}}));
  }

  void pasteReadsSpreadsheets_data() {
    QTest::addColumn<QString>("text");
    QTest::addRow("tabs, comma") << "3,5\t0,71\tsweep\n4\t0,69\ttap\n";
    QTest::addRow("tabs, line ends") << "3.5\t0.71\tSweep\r\n4\t0.69\tTap\r\n\r\n";
    QTest::addRow("semicolons") << "3,5;0,71;sweep\n4;0,69;tap";
  }
  void pasteReadsSpreadsheets() {
    QFETCH(QString, text);
    const auto pasted = withCellsPasted(rows, 1, columns(), cellsFromText(text));
    QVERIFY(pasted.has_value());
    QCOMPARE(pasted->rows, (Json{rows[0],
                                 {{"flow", 3.5}, {"mass", 0.71}, {"kind", "sweep"}},
                                 {{"flow", 4.0}, {"mass", 0.69}, {"kind", "tap"}}}));
    QCOMPARE(pasted->what, QString("paste into rows 2 to 3"));
  }

  void pasteIsRefusedAsAWhole_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QStringList>("words");
    QTest::addRow("no number") << "3\t1\n4\t0.7x" << QStringList{"row 3", "mass", "\"0.7x\""};
    QTest::addRow("out of bounds") << "3\t-1" << QStringList{"row 2", "mass", "\u22121"};
    QTest::addRow("no choice") << "3\t1\tjump" << QStringList{"row 2", "kind", "jump", "Tap, Sweep"};
    QTest::addRow("too wide") << "3\t1\ttap\t9" << QStringList{"row 2", "4 cells", "3 columns"};
    QTest::addRow("grouping") << "1.234,5\t1" << QStringList{"row 2", "flow", "grouping"};
  }
  void pasteIsRefusedAsAWhole() {
    QFETCH(QString, text);
    QFETCH(QStringList, words);
    const auto pasted = withCellsPasted(rows, 1, columns(), cellsFromText(text));
    QVERIFY(!pasted.has_value());
    QVERIFY2(pasted.error().startsWith("Nothing was pasted"), qPrintable(pasted.error()));
    for (const QString& word : words) {
      QVERIFY2(pasted.error().contains(word), qPrintable(pasted.error()));
    }
  }

  void numbersKeepTheirDigits() {
    for (const double value : {0.1, 1e-9, 123456789.125, -0.000001, 1.0 / 3, 6.02e23}) {
      const auto read = valueFromText(number("flow"), numberText(value));
      QVERIFY2(read.has_value(), qPrintable(numberText(value)));
      QCOMPARE(read->get<double>(), value);
    }
    QCOMPARE(numberText(-2.5), QString("\u22122.5"));
    QCOMPARE(decimalsOf(0.125), 3);
  }

  void pathsFindTheirPlace() {
    const InputPath path = InputPath::fromText("captures[3].capture");
    QCOMPARE(path.row, 3);
    QCOMPARE(path.text(), QString("captures[3].capture"));
    const Json inputs{{"captures", Json{{{"axis", "x"}}}}};
    const Json file{{"file", "a.csv"}};
    QCOMPARE(withValueAt(inputs, path, file), (Json{{{"axis", "x"}}, Json::object(), {{"capture", file}}}));
    QCOMPARE(withValueAt(inputs, InputPath::fromText("log"), file), file);
  }

  void positionsAreReadInManyWays_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QList<double>>("rising");
    QTest::addRow("blanks") << "15 69,5 123" << QList<double>{15, 69.5, 123};
    QTest::addRow("semicolons") << "15;69,5;123" << QList<double>{15, 69.5, 123};
    QTest::addRow("commas") << "15,69,123" << QList<double>{15, 69, 123};
    QTest::addRow("comma and blank") << "15, 69.5, 123" << QList<double>{15, 69.5, 123};
    QTest::addRow("falling") << "123 69 15" << QList<double>{15, 69, 123};
    QTest::addRow("range") << "15..285: 4" << QList<double>{15, 105, 195, 285};
    QTest::addRow("range, known count") << "-10..10" << QList<double>{-10, 0, 10};
    QTest::addRow("none") << " " << QList<double>{};
  }
  void positionsAreReadInManyWays() {
    QFETCH(QString, text);
    QFETCH(QList<double>, rising);
    const auto read = positionsFromText(text, 3);
    QVERIFY2(read.has_value(), qPrintable(read ? QString() : read.error()));
    QCOMPARE(QList<double>(read->rising.begin(), read->rising.end()), rising);
  }

  void positionsThatGoBackAndForthAreRefused() {
    QVERIFY(!positionsFromText("15 69 50").has_value());
    QVERIFY(!positionsFromText("15 15").has_value());
    QVERIFY(!positionsFromText("15 a").has_value());
    QVERIFY(!positionsFromText("15..285").has_value());
    QVERIFY(!positionsFromText("15..285: 1").has_value());
  }

  void gridsKeepTheirHeights() {
    const GridValue grid =
        GridValue::fromJson({{"x", {0, 10}}, {"y", {20, 0}}, {"z", {{1, 2}, {3, nullptr}}}});
    QCOMPARE(grid.y, (std::vector<double>{0, 20}));
    QCOMPARE(grid.z[0][0].value_or(-1), 3.0);
    QVERIFY(!grid.z[0][1].has_value());
    QCOMPARE(grid.toJson(),
             (Json{{"x", {0.0, 10.0}}, {"y", {0.0, 20.0}}, {"z", {{3.0, nullptr}, {1.0, 2.0}}}}));
    const GridValue moved = withPositions(grid, GridAxis::x, {1, 9});
    QCOMPARE(moved.z, grid.z);
    const GridValue more = withPositions(grid, GridAxis::x, {0, 5, 10});
    QCOMPARE(more.z[1][0].value_or(-1), 1.0);
    QVERIFY(!more.z[1][1].has_value());
    QCOMPARE(more.z[1][2].value_or(-1), 2.0);
  }

  void heightsArePastedAsTheBedLies() {
    const GridValue grid = GridValue::fromJson({{"x", {0, 10}}, {"y", {0, 20}}, {"z", Json::array()}});
    const auto pasted = withHeightsPasted(grid, number("z"), 0, 0, cellsFromText("0,1\t0,2\n0,3\t0,4"));
    QVERIFY(pasted.has_value());
    QCOMPARE(pasted->z[1][0].value_or(-1), 0.1);  // the back row came first
    QCOMPARE(pasted->z[0][1].value_or(-1), 0.4);
    QVERIFY(!withHeightsPasted(grid, number("z"), 1, 0, cellsFromText("1\t2\n3\t4")).has_value());
    QVERIFY(!withHeightsPasted(grid, number("z"), 0, 0, cellsFromText("1\tb")).has_value());
  }
};

FETTLE_TEST(TestTableRows)
#include "test_table_rows.moc"
