#include <QTest>

#include "core/intake/height_grid.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;
using Row = std::vector<double>;

/// Expected values: the same six heights read off the small texts by hand, x 10, 20, 30 and y 5, 15.
class TestHeightGrid : public QObject {
  Q_OBJECT

  const Row m_x = {10, 20, 30};
  const Row m_y = {5, 15};
  const Row m_front = {0.1, 0.2, 0.3};
  const Row m_back = {-0.1, -0.2, -0.3};

  void compare(const Intake<HeightGrid>& grid) {
    QVERIFY2(grid.has_value(), grid ? "" : grid.error().sentence.c_str());
    QCOMPARE(grid->x, m_x);
    QCOMPARE(grid->y, m_y);
    QCOMPARE(grid->z, (std::vector<Row>{m_front, m_back}));
  }

  GridOptions positions() const {
    GridOptions options;
    options.x = m_x;
    options.y = m_y;
    return options;
  }

 private slots:
  void readsRowsAsTheyStand() { compare(readGrid("0.1 0.2 0.3\n-0.1 -0.2 -0.3\n", positions())); }

  void readsEveryWayOfParting_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::newRow("commas") << QByteArray("0.1,0.2,0.3\n-0.1,-0.2,-0.3\n");
    QTest::newRow("tabs and decimal commas") << QByteArray("0,1\t0,2\t0,3\r\n-0,1\t-0,2\t-0,3\r\n");
    QTest::newRow("semicolons and decimal commas") << QByteArray("0,1;0,2;0,3\n-0,1;-0,2;-0,3");
    QTest::newRow("aligned with blanks") << QByteArray("   0.1    0.2   0.3\n  -0.1   -0.2  -0.3\n");
    QTest::newRow("plus signs") << QByteArray("+0.1 +0.2 +0.3\n\u22120.1 \u22120.2 \u22120.3\n");
    QTest::newRow("delimiter at the end") << QByteArray("0.1,0.2,0.3,\n-0.1,-0.2,-0.3,\n");
    QTest::newRow("caption") << QByteArray("heights in mm\n\n0.1 0.2 0.3\n-0.1 -0.2 -0.3\n");
    QTest::newRow("comment") << QByteArray("# cold\n0.1 0.2 0.3\n-0.1 -0.2 -0.3\n");
  }
  void readsEveryWayOfParting() {
    QFETCH(QByteArray, text);
    compare(readGrid(text.toStdString(), positions()));
  }

  void turnsBackRowFirst() {
    auto options = positions();
    options.backRowFirst = true;
    compare(readGrid("-0.1 -0.2 -0.3\n0.1 0.2 0.3\n", options));
    options.y = {15, 5};  // falling positions say the same already
    compare(readGrid("-0.1 -0.2 -0.3\n0.1 0.2 0.3\n", options));
    options.backRowFirst = false;
    compare(readGrid("-0.1 -0.2 -0.3\n0.1 0.2 0.3\n", options));
  }

  void turnsRightToLeft() {
    auto options = positions();
    options.rightToLeft = true;
    compare(readGrid("0.3 0.2 0.1\n-0.3 -0.2 -0.1\n", options));
    options.x = {30, 20, 10};
    compare(readGrid("0.3 0.2 0.1\n-0.3 -0.2 -0.1\n", options));
  }

  void turnsColumnsFirst() {
    auto options = positions();
    options.columnsFirst = true;
    compare(readGrid("0.1 -0.1\n0.2 -0.2\n0.3 -0.3\n", options));
    options.backRowFirst = true;
    compare(readGrid("-0.1 0.1\n-0.2 0.2\n-0.3 0.3\n", options));
    options.rightToLeft = true;
    compare(readGrid("-0.3 0.3\n-0.2 0.2\n-0.1 0.1\n", options));
  }

  void readsPositionsInTheText_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<bool>("columnsFirst");
    QTest::newRow("corner of words") << QByteArray("y/x,10,20,30\n5,0.1,0.2,0.3\n15,-0.1,-0.2,-0.3\n")
                                     << false;
    QTest::newRow("empty corner") << QByteArray(";10;20;30\n15;-0,1;-0,2;-0,3\n5;0,1;0,2;0,3\n") << false;
    QTest::newRow("no corner") << QByteArray("    10   20   30\n5  0.1  0.2  0.3\n15 -0.1 -0.2 -0.3\n")
                               << false;
    QTest::newRow("falling x") << QByteArray("x 30 20 10\n5 0.3 0.2 0.1\n15 -0.3 -0.2 -0.1\n") << false;
    QTest::newRow("columns first") << QByteArray("x 5 15\n10 0.1 -0.1\n20 0.2 -0.2\n30 0.3 -0.3\n") << true;
  }
  void readsPositionsInTheText() {
    QFETCH(QByteArray, text);
    QFETCH(bool, columnsFirst);
    GridOptions options;
    options.columnsFirst = columnsFirst;
    compare(readGrid(text.toStdString(), options));
  }

  void recognisesPositionsByTheirRun() {
    const string text = "10 20 30\n0.1 0.2 0.3\n-0.1 -0.2 -0.3\n";
    GridOptions options;
    options.y = m_y;
    compare(readGrid(text, options));
    options.firstRowIsPositions = false;
    options.y = {5, 15, 25};
    options.x = m_x;
    QCOMPARE(readGrid(text, options)->z.front(), (Row{10, 20, 30}));
    GridOptions left;
    left.x = m_x;
    compare(readGrid("15 -0.1 -0.2 -0.3\n5 0.1 0.2 0.3\n", [&] {
      auto said = left;
      said.firstColumnIsPositions = true;
      return said;
    }()));
  }

  void offersRangesOfAComment() {
    const string text = "# x 10..30, y 15..5 (back row first)\n-0.1 -0.2 -0.3\n0.1 0.2 0.3\n";
    const auto grid = readGridText(text);
    QVERIFY(grid.has_value());
    QVERIFY(grid->x && grid->y);
    QCOMPARE(grid->x->first, 10.0);
    QCOMPARE(grid->x->last, 30.0);
    QCOMPARE(grid->y->first, 15.0);
    QCOMPARE(grid->y->last, 5.0);
    GridOptions options;
    QVERIFY(!readGrid(text, options).has_value());  // only a suggestion
    options.useSuggested = true;
    compare(readGrid(text, options));
    compare(readGrid("# max heights, x: 10 to 30; y = 5 to 15\n0.1 0.2 0.3\n-0.1 -0.2 -0.3\n", options));
    compare(readGrid("# x 10,0..30,0 y 5,0..15,0\n0,1;0,2;0,3\n-0,1;-0,2;-0,3\n", options));
  }

  void refuses_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QByteArray>("sentence");
    const auto row = [](const char* name, const char* text, const char* sentence) {
      QTest::newRow(name) << QByteArray(text) << QByteArray(sentence);
    };
    row("nothing", "", "There is no text to read; a table with one row of numbers per line is needed.");
    row("ragged", "0.1 0.2 0.3\n0.1 0.2\n",
        "Line 2 has 2 cells where the table has 3 columns; every row needs the same number.");
    row("a word", "0.1 0.2 0.3\n0.1 off 0.2\n",
        "Line 2, column 2: \"off\" is not a number; digits with a decimal point are needed, such as 12.5.");
    row("not a number", "0.1,0.2,0.3\n0.1,nan,0.2\n",
        "Line 2, column 2: \"nan\" is not a number; digits with a decimal point are needed, such as 12.5.");
    row("an empty cell", "0.1,0.2,0.3\n0.1,,0.2\n", "Line 2, column 2 is empty; a number is needed.");
    row("another length", "0.1 0.2\n0.1 0.2\n", "3 positions of x are given, but the grid has 2.");
    row("one row", "0.1 0.2 0.3\n",
        "The grid has 1 rows and 3 columns of heights; at least 2 of each are needed.");
  }
  void refuses() {
    QFETCH(QByteArray, text);
    QFETCH(QByteArray, sentence);
    const auto grid = readGrid(text.toStdString(), positions());
    QVERIFY(!grid.has_value());
    QCOMPARE(grid.error().sentence, sentence.toStdString());
  }

  void refusesPositionsThatAreNone() {
    const string text = "0.1 0.2 0.3\n-0.1 -0.2 -0.3\n";
    auto options = positions();
    options.x.clear();
    QCOMPARE(readGrid(text, options).error().sentence,
             string("The grid does not say where it was measured; give its 3 positions of x."));
    options.x = {10, 30, 20};
    QCOMPARE(readGrid(text, options).error().sentence,
             string("The positions of x must all rise or all fall; 20 follows 30."));
    options.x = {10, 20, std::nan("")};
    QVERIFY(!readGrid(text, options).has_value());
  }

  void spacesEvenly() {
    QCOMPARE(evenPositions(15, 285, 6), (Row{15, 69, 123, 177, 231, 285}));
    QCOMPARE(evenPositions(285, 15, 2), (Row{285, 15}));
  }
};

FETTLE_TEST(TestHeightGrid)
#include "test_height_grid.moc"
