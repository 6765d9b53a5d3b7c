#include "ui/bench/result_table.h"

#include <QScrollBar>
#include <QTest>

#include "tests/support/test_main.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// Results side by side in a narrow column.
class TestResultTable : public QObject {
  Q_OBJECT

  struct Made {
    std::vector<ResultValue> values;
    StepResult result;
    ResultTable table;
  };

  static std::unique_ptr<Made> made(std::size_t owners, std::size_t quantities) {
    auto all = std::make_unique<Made>();
    all->values.resize(owners * quantities);
    for (std::size_t q = 0; q < quantities; ++q) {
      all->table.columns.push_back({"Mean reversal of quantity " + std::to_string(q), "mm"});
    }
    for (std::size_t o = 0; o < owners; ++o) {
      all->table.owners.push_back("x, two-hump " + std::to_string(o));
      auto& row = all->table.rows.emplace_back();
      for (std::size_t q = 0; q < quantities; ++q) {
        ResultValue& value = all->values[o * quantities + q];
        value = {"id" + std::to_string(o) + "." + std::to_string(q),
                 plainQuantity(0.0237, "mm"),
                 "mm",
                 {},
                 {},
                 {}};
        value.quantity->u = 0.0019;
        all->result.judgements.push_back({value.id, Verdict::pass, {}, 0});
        row.push_back(&value);
      }
    }
    return all;
  }

  static int valuesIn(const QTableWidget& view) {
    int count = 0;
    for (int row = 0; row < view.rowCount(); ++row) {
      for (int column = 0; column < view.columnCount(); ++column) {
        count += view.item(row, column)->text().startsWith("0.0237") ? 1 : 0;
      }
    }
    return count;
  }

 private slots:
  void nothingHasToBeScrolledTo_data() {
    QTest::addColumn<int>("owners");
    QTest::addColumn<int>("quantities");
    QTest::newRow("axes") << 2 << 12;
    QTest::newRow("shapers") << 12 << 7;
    QTest::newRow("one quantity") << 6 << 1;
  }

  void nothingHasToBeScrolledTo() {
    QFETCH(int, owners);
    QFETCH(int, quantities);
    const auto all = made(static_cast<std::size_t>(owners), static_cast<std::size_t>(quantities));
    ResultTableView view(Palette::light());
    view.show(all->table, all->result);
    view.resize(396, view.height());
    view.QWidget::show();
    QVERIFY(QTest::qWaitForWindowExposed(&view));
    QCOMPARE(view.horizontalScrollBar()->maximum(), 0);
    QCOMPARE(view.verticalScrollBar()->maximum(), 0);
    QCOMPARE(valuesIn(view), owners * quantities);
  }

  void fewOwnersStandInColumns() {
    const auto all = made(2, 12);
    const auto fitted = fittedTo(matrixOf(all->table, all->result), 396,
                                 [](const QString& text) { return 6 * static_cast<int>(text.size()); });
    QCOMPARE(fitted.lines.size(), std::size_t{13});
    QCOMPARE(fitted.lines[0][2].text, QString("x, two-hump 1"));
    QCOMPARE(fitted.lines[12][0].text, QString("Mean reversal of quantity 11, mm"));
  }

  void verdictsHaveGlyphAndWord() {
    const auto all = made(1, 1);
    const ResultMatrix matrix = matrixOf(all->table, all->result);
    QCOMPARE(matrix.cells[0][0].text.section(' ', 1), QString("✓\u00a0pass"));
    QVERIFY(matrix.cells[0][0].spoken.startsWith("x, two-hump 0, Mean reversal"));
  }
};

FETTLE_TEST(TestResultTable)
#include "test_result_table.moc"
