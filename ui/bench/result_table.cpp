#include "ui/bench/result_table.h"

#include <QApplication>
#include <QHeaderView>
#include <QResizeEvent>
#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/unit.h"
#include "core/report/report_words.h"
#include "ui/bench/result_words.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

constexpr int cellRoom = 10;   ///< beside the text of a cell
constexpr int labelParts = 3;  ///< labels take at most one of so many parts of the room

ResultCell cellOf(const ResultValue* value, const StepResult& result) {
  ResultCell cell;
  if (!value) {
    return cell;
  }
  cell.text = value->quantity ? unbroken(formatValue(*value->quantity)) : QStringLiteral("–");
  cell.tip = QString::fromStdString(value->why);
  const Judged* judged = result.judgement(value->id);
  if (judged && judged->verdict != Verdict::none) {
    cell.verdict = judged->verdict;
    const QString verdict =
        QString::fromStdString(verdictText(judged->verdict)).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
    cell.text += QLatin1Char(' ') + verdict;  // the one place where the cell may break
  }
  return cell;
}

int widestPiece(const QString& text, const std::function<int(const QString&)>& width) {
  int widest = 0;
  for (const auto& piece : text.split(QLatin1Char(' '))) {
    widest = std::max(widest, width(piece));
  }
  return widest + cellRoom;
}

struct Fold {
  int labels = 0;    ///< width the labels need
  int values = 1;    ///< width the widest value needs
  int perBlock = 1;  ///< columns of values beside each other
  int blocks = 1;
  qsizetype lines = 0;
};

Fold foldOf(const ResultMatrix& matrix, int room, const std::function<int(const QString&)>& width) {
  Fold fold;
  int longest = 0;
  for (const auto& label : matrix.rows) {
    fold.labels = std::max(fold.labels, widestPiece(label, width));
    longest = std::max(longest, width(label) + cellRoom);
  }
  for (const auto& head : matrix.columns) {
    fold.values = std::max(fold.values, widestPiece(head, width));
  }
  for (const auto& row : matrix.cells) {
    for (const auto& cell : row) {
      fold.values = std::max(fold.values, widestPiece(cell.text, width));
    }
  }
  fold.labels = std::max(fold.labels, std::min(longest, room / labelParts));
  const int columns = std::max(1, static_cast<int>(matrix.columns.size()));
  fold.perBlock = std::clamp((room - fold.labels) / fold.values, 1, columns);
  fold.blocks = (columns + fold.perBlock - 1) / fold.perBlock;
  fold.perBlock = (columns + fold.blocks - 1) / fold.blocks;
  fold.lines = fold.blocks * (matrix.rows.size() + 1);
  return fold;
}

}  // namespace

ResultMatrix ResultMatrix::turned() const {
  ResultMatrix other{columns, rows, {}};
  for (qsizetype column = 0; column < columns.size(); ++column) {
    auto& line = other.cells.emplace_back();
    for (const auto& row : cells) {
      line.push_back(row[static_cast<std::size_t>(column)]);
    }
  }
  return other;
}

ResultMatrix matrixOf(const ResultTable& table, const StepResult& result) {
  ResultMatrix matrix;
  for (const auto& column : table.columns) {
    const QString unit = unbroken(displayUnit(column.unit));
    matrix.columns << QString::fromStdString(column.label) + (unit.isEmpty() ? "" : ", " + unit);
  }
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    matrix.rows << QString::fromStdString(table.owners[row]);
    auto& line = matrix.cells.emplace_back();
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
      ResultCell cell = cellOf(table.rows[row][column], result);
      const QString said = cell.tip.isEmpty() ? cell.text : cell.tip;
      cell.spoken = QStringLiteral("%1, %2: %3")
                        .arg(matrix.rows.back(), matrix.columns[static_cast<qsizetype>(column)], said);
      line.push_back(std::move(cell));
    }
  }
  return matrix;
}

FittedCells fittedTo(const ResultMatrix& matrix, int room,
                     const std::function<int(const QString&)>& width) {
  const ResultMatrix other = matrix.turned();
  const Fold asIs = foldOf(matrix, room, width), asTurned = foldOf(other, room, width);
  const bool turn =
      asTurned.blocks < asIs.blocks || (asTurned.blocks == asIs.blocks && asTurned.lines < asIs.lines);
  const ResultMatrix& shown = turn ? other : matrix;
  const Fold& fold = turn ? asTurned : asIs;
  FittedCells fitted{{}, fold.labels, fold.values};
  for (int first = 0; first < shown.columns.size(); first += fold.perBlock) {
    const int after = std::min(first + fold.perBlock, static_cast<int>(shown.columns.size()));
    auto& heads = fitted.lines.emplace_back();
    heads.push_back({ResultCell::Kind::head, QString()});
    for (int column = first; column < after; ++column) {
      heads.push_back({ResultCell::Kind::head, shown.columns[column]});
    }
    for (qsizetype row = 0; row < shown.rows.size(); ++row) {
      auto& line = fitted.lines.emplace_back();
      line.push_back({ResultCell::Kind::label, shown.rows[row]});
      const auto& cells = shown.cells[static_cast<std::size_t>(row)];
      line.insert(line.end(), cells.begin() + first, cells.begin() + after);
    }
  }
  return fitted;
}

ResultTableView::ResultTableView(const Palette& palette, QWidget* parent)
    : QTableWidget(parent), m_palette(palette) {
  setEditTriggers(NoEditTriggers);
  setTabKeyNavigation(false);
  setAccessibleName(tr("Values side by side"));
  setFont(fontsOf(QApplication::font().pointSizeF()).small);
  setWordWrap(true);
  setTextElideMode(Qt::ElideNone);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
  horizontalHeader()->hide();
  verticalHeader()->hide();
  horizontalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setMinimumSectionSize(1);
}

void ResultTableView::show(const ResultTable& table, const StepResult& result) {
  m_matrix = matrixOf(table, result);
  m_room = viewport()->width();
  layOut();
}

bool ResultTableView::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) {
    setFont(fontsOf(QApplication::font().pointSizeF()).small);
    layOut();
  }
  return QTableWidget::event(event);
}

void ResultTableView::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  if (m_room != viewport()->width()) {
    m_room = viewport()->width();
    layOut();
  }
}

void ResultTableView::layOut() {
  const QFontMetrics metrics(font());
  const auto width = [&](const QString& text) { return metrics.horizontalAdvance(text); };
  const FittedCells fitted = fittedTo(m_matrix, m_room, width);
  std::size_t columns = 0;
  for (const auto& line : fitted.lines) {
    columns = std::max(columns, line.size());
  }
  setRowCount(static_cast<int>(fitted.lines.size()));
  setColumnCount(static_cast<int>(columns));
  for (std::size_t row = 0; row < fitted.lines.size(); ++row) {
    const auto& line = fitted.lines[row];
    for (std::size_t column = 0; column < columns; ++column) {
      put(static_cast<int>(row), static_cast<int>(column),
          column < line.size() ? line[column] : ResultCell{});
    }
  }
  const int valueColumns = std::max(1, static_cast<int>(columns) - 1);
  const int each = std::max(fitted.values, (m_room - fitted.labels) / valueColumns);
  for (int column = 0; column < columnCount(); ++column) {
    setColumnWidth(column, column == 0 ? std::max(fitted.labels, m_room - each * valueColumns) : each);
  }
  resizeRowsToContents();
  setFixedHeight(verticalHeader()->length() + 2 * frameWidth());
}

void ResultTableView::put(int row, int column, const ResultCell& cell) {
  auto* entry = item(row, column);
  if (!entry) {
    entry = new QTableWidgetItem;
    entry->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    setItem(row, column, entry);
  }
  const bool isHead = cell.kind == ResultCell::Kind::head;
  entry->setText(cell.text);
  entry->setToolTip(cell.tip);
  entry->setData(Qt::AccessibleTextRole, cell.spoken.isEmpty() ? cell.text : cell.spoken);
  entry->setTextAlignment(Qt::AlignVCenter | (column == 0 ? Qt::AlignLeft : Qt::AlignRight));
  entry->setForeground(isHead                               ? m_palette.dim
                       : cell.verdict == Verdict::fail      ? m_palette.fault
                       : cell.verdict == Verdict::undecided ? m_palette.caution
                                                            : m_palette.text);
  entry->setBackground(isHead ? QBrush(palette().color(QPalette::Window)) : QBrush());
}

}  // namespace fettle::ui
