#include "ui/forms/cell_view.h"

#include <QApplication>
#include <QClipboard>
#include <QDropEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QMimeData>
#include <QScrollBar>

#include "ui/forms/drop_down.h"
#include "ui/forms/dropped_files.h"
#include "ui/forms/entry_order.h"
#include "ui/forms/keys.h"
#include "ui/forms/table_rows.h"
#include "ui/theme/look.h"

namespace fettle::ui {
CellView::CellView(QWidget* parent) : QTableView(parent), m_corner(new QLabel(QStringLiteral("#"), this)) {
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                  QAbstractItemView::AnyKeyPressed);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setTabKeyNavigation(false);  // Tab leaves the table
  setCornerButtonEnabled(false);
  setAcceptDrops(true);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
  horizontalHeader()->setMinimumSectionSize(leastColumn);
  verticalHeader()->setHighlightSections(false);
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setDefaultAlignment(Qt::AlignCenter);
  m_corner->setAlignment(Qt::AlignCenter);
  m_corner->setForegroundRole(QPalette::PlaceholderText);
  m_corner->setAttribute(Qt::WA_TransparentForMouseEvents);
  fitRows();
}

void CellView::setModel(QAbstractItemModel* model) {
  QTableView::setModel(model);
  const auto renew = [this] {
    updateGeometry();
    fitColumns();
  };
  connect(model, &QAbstractItemModel::rowsInserted, this, renew);
  connect(model, &QAbstractItemModel::rowsRemoved, this, renew);
  connect(model, &QAbstractItemModel::modelReset, this, renew);
  connect(model, &QAbstractItemModel::dataChanged, this, &CellView::fitColumns);
  setCurrentIndex(model->index(0, 0));
}

void CellView::setRowNumbersShown(bool shown) {
  verticalHeader()->setVisible(shown);
  m_corner->setVisible(shown);
}

void CellView::setCornerText(const QString& text) {
  m_corner->setText(text);
}

void CellView::fitRows() {
  const QFont small = fontsOf(QApplication::font().pointSizeF()).small;
  horizontalHeader()->setFont(small);
  m_corner->setFont(small);
  const int height = QFontMetrics(font()).height();
  verticalHeader()->setMinimumSectionSize(height);
  verticalHeader()->setDefaultSectionSize(height * 3 / 2);
  updateGeometry();
}

QSize CellView::sizeHint() const {
  const int rows = model() == nullptr ? 0 : model()->rowCount();
  const int row = verticalHeader()->defaultSectionSize();
  // Half a row more than fits tells that there is more.
  const int most = m_mostRows * row + row / 2;
  const int wanted = rows > m_mostRows ? verticalHeader()->sectionPosition(m_mostRows) + row / 2
                                       : verticalHeader()->length();
  const int height = std::min(wanted, 2 * most);
  const int bar = horizontalScrollBar()->isVisibleTo(this) ? horizontalScrollBar()->sizeHint().height() : 0;
  return {200, height + horizontalHeader()->minimumHeight() + bar + 2 * frameWidth()};
}

QSize CellView::minimumSizeHint() const {
  return {120, sizeHint().height()};
}

void CellView::updateGeometries() {
  QTableView::updateGeometries();
  m_corner->setGeometry(frameWidth(), frameWidth(), verticalHeader()->width(),
                        horizontalHeader()->height());
}

void CellView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  fitColumns();
}

void CellView::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) {
    fitRows();
    fitColumns();
  }
}

bool CellView::isPlace(int row, int column) const {
  return !isColumnHidden(column) && (model()->index(row, column).flags() & Qt::ItemIsEditable) != 0;
}

QModelIndex CellView::next(const QModelIndex& from, Way way) const {
  const int rows = model()->rowCount(), columns = model()->columnCount();
  int row = from.row(), column = from.column();
  while (true) {
    if (way == Way::down || way == Way::up) {
      row += way == Way::down ? 1 : -1;
    } else {
      row += column + 1 == columns ? 1 : 0;
      column = (column + 1) % columns;
    }
    if (row < 0 || row >= rows) {
      return {};
    }
    if (isPlace(row, column)) {
      return model()->index(row, column);
    }
  }
}

bool CellView::move(Way way) {
  if (way == Way::enter) {
    way = m_enter == Direction::right ? Way::onward : Way::down;
  }
  const QModelIndex to = currentIndex().isValid() ? next(currentIndex(), way) : model()->index(0, 0);
  if (to.isValid()) {
    goTo(to);
  }
  return to.isValid();
}

void CellView::goTo(const QModelIndex& cell) {
  selectionModel()->setCurrentIndex(cell, QItemSelectionModel::ClearAndSelect);
  scrollTo(cell);
}

void CellView::go(Way way) {
  if (way == Way::out || way == Way::outBack) {
    focusNextPrevChild(way == Way::out);
  } else if (!move(way) && way == Way::enter) {
    goOnFrom(*this);
  }
}

bool CellView::openCell(const QModelIndex& index) {
  return edit(index, QAbstractItemView::AllEditTriggers, nullptr);
}

bool CellView::edit(const QModelIndex& index, EditTrigger trigger, QEvent* event) {
  const bool isTaken = QTableView::edit(index, trigger, event);
  const bool opens = trigger == DoubleClicked || trigger == EditKeyPressed || trigger == AllEditTriggers;
  if (isTaken && opens && state() != EditingState) {
    emit cellOpened(index);  // there is nothing to type into
  }
  if (isTaken && opens && trigger != DoubleClicked) {
    if (auto* list = qobject_cast<DropDown*>(QApplication::focusWidget()); list && isAncestorOf(list)) {
      list->showPopup();
    }
  }
  return isTaken;
}

std::set<int> CellView::selectedRows() const {
  std::set<int> rows;
  for (const QModelIndex& index : chosenCells()) {
    rows.insert(index.row());
  }
  return rows;
}

QModelIndexList CellView::chosenCells() const {
  QModelIndexList cells;
  for (const QModelIndex& index : selectionModel()->selectedIndexes()) {
    if (!isColumnHidden(index.column())) {
      cells << index;
    }
  }
  if (cells.isEmpty() && currentIndex().isValid()) {
    cells << currentIndex();
  }
  std::sort(cells.begin(), cells.end());
  return cells;
}

void CellView::copyChosen() const {
  ClipboardCells cells;
  int row = -1;
  for (const QModelIndex& index : chosenCells()) {
    if (index.row() != row) {
      row = index.row();
      cells.emplace_back();
    }
    cells.back() << index.data(Qt::EditRole).toString().replace(QChar(0x2212), '-');
  }
  QApplication::clipboard()->setText(textFromCells(cells));
}

std::optional<CellCommand> CellView::commandOf(const QKeyEvent& event) {
  const bool isControl = event.modifiers() == Qt::ControlModifier;
  if (event.matches(QKeySequence::Copy)) {
    return CellCommand::copy;
  }
  if (event.matches(QKeySequence::Cut)) {
    return CellCommand::cut;
  }
  if (event.matches(QKeySequence::Paste)) {
    return CellCommand::paste;
  }
  if (event.key() == Qt::Key_Delete) {
    return isControl ? CellCommand::removeRows : CellCommand::clear;
  }
  if (event.key() == Qt::Key_Insert && event.modifiers() == Qt::NoModifier) {
    return CellCommand::insertRow;
  }
  if (event.key() == Qt::Key_D && isControl) {
    return CellCommand::exclude;
  }
  return std::nullopt;
}

bool CellView::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && commandOf(*static_cast<QKeyEvent*>(event))) {
    event->accept();  // keys of the table come before those of the window
    return true;
  }
  return QTableView::event(event);
}

void CellView::keyPressEvent(QKeyEvent* event) {
  if (m_keyHook && m_keyHook(currentIndex(), event)) {
    event->accept();
    return;
  }
  if (const auto command = commandOf(*event)) {
    emit commanded(*command);
    event->accept();
    return;
  }
  if (isEnter(*event)) {
    go(Way::enter);
    event->accept();
  } else if (event->key() == Qt::Key_PageUp || event->key() == Qt::Key_PageDown) {
    event->ignore();
  } else {
    QTableView::keyPressEvent(event);
  }
}

void CellView::dragEnterEvent(QDragEnterEvent* event) {
  dragMoveEvent(event);
}

void CellView::dragMoveEvent(QDragMoveEvent* event) {
  event->setAccepted(!filesIn(event->mimeData()).isEmpty());
}

void CellView::dropEvent(QDropEvent* event) {
  emit filesDropped(filesIn(event->mimeData()), indexAt(event->position().toPoint()));
  event->acceptProposedAction();
}

}  // namespace fettle::ui
