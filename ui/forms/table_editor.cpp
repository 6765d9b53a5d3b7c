#include "ui/forms/table_editor.h"

#include <QApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/forms/cell_delegate.h"
#include "ui/forms/dropped_files.h"
#include "ui/forms/field_value.h"
#include "ui/forms/file_line.h"
#include "ui/forms/instrument_bar.h"
#include "ui/forms/keys.h"
#include "ui/forms/reason_bar.h"
#include "ui/forms/small_label.h"
#include "ui/forms/table_model.h"
#include "ui/forms/table_rows.h"

namespace fettle::ui {
namespace {

/// The file of a row comes first: it is what the row is about, and must not be scrolled away.
std::vector<Field> capturesFirst(std::vector<Field> columns) {
  std::stable_partition(columns.begin(), columns.end(),
                        [](const Field& column) { return column.kind == FieldKind::capture; });
  return columns;
}

}  // namespace

TableEditor::TableEditor(Field described, const FormContext& context, QWidget* parent)
    : FieldEditor(std::move(described), parent),
      m_context(context),
      m_model(new TableModel(capturesFirst(field().columns), this)),
      m_view(new CellView),
      m_delegate(
          new CellDelegate([this](const QModelIndex& i) { return &m_model->field(i.column()); }, this)),
      m_menuButton(new QToolButton),
      m_fileLine(new FileLine(objectNameOf(field().key))),
      m_problem(new SmallLabel({}, SmallLabel::Tone::fault)),
      m_excluded(new SmallLabel),
      m_reasonBar(new ReasonBar),
      m_instrumentBar(new InstrumentBar(context)),
      m_memory(TableMemory::load(field())) {
  setObjectName(childName("TableEditor"));
  m_view->setObjectName(childName("TableView"));
  m_problem->setObjectName(childName("Problem"));
  m_view->setModel(m_model);
  m_view->setItemDelegate(m_delegate);
  m_view->setEnterDirection(m_memory.enter);
  m_view->setKeyHook(
      [this](const QModelIndex& index, QKeyEvent* event) { return handleKey(index, event); });
  nameFor(m_view);
  m_view->setToolTip({});
  setFocusProxy(m_view);
  build();
  connectView();
  refresh();
}

void TableEditor::build() {
  m_menuButton->setText(QStringLiteral("⋯"));
  m_menuButton->setAutoRaise(true);
  m_menuButton->setObjectName(childName("MenuButton"));
  m_menuButton->setAccessibleName(tr("%1: what the table can do").arg(label()));
  m_menuButton->setToolTip(m_menuButton->accessibleName());
  m_menuButton->setPopupMode(QToolButton::InstantPopup);
  auto* menu = new QMenu(m_menuButton);
  connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillTableMenu(*menu, *this, -1); });
  m_menuButton->setMenu(menu);

  auto* head = new QHBoxLayout;
  head->addWidget(makeCaption(m_view), 1);
  head->addWidget(m_menuButton);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addLayout(head);
  for (QWidget* part : std::initializer_list<QWidget*>{m_fileLine, m_view, m_problem, m_reasonBar,
                                                       m_excluded, m_instrumentBar}) {
    layout->addWidget(part);
  }
}

void TableEditor::connectView() {
  connect(m_model, &TableModel::cellEdited, this, [this](int row, int column, const Json& value) {
    apply(withCell(m_model->rows(), row, m_model->field(column), value));
  });
  connect(m_delegate, &CellDelegate::problemChanged, this, [this](const QString& sentence) {
    m_problem->setSentence(sentence);
    m_isRefusalNew = !sentence.isEmpty();
  });
  connect(m_delegate, &CellDelegate::left, m_view, &CellView::go);
  connect(m_view, &CellView::commanded, this, &TableEditor::run);
  connect(m_fileLine, &FileLine::typeInstead, this, [this] {
    commit({}, tr("%1, typed instead of a file").arg(label()));
    showValue(value());
  });
  connect(m_view, &CellView::cellOpened, this, &TableEditor::chooseFile);
  connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] { m_word.end(); });
  connect(m_view, &CellView::filesDropped, this, [this](const QStringList& files, const QModelIndex& at) {
    openFiles(files, at.isValid() ? at.row() : static_cast<int>(m_model->rows().size()));
  });
  connect(m_reasonBar, &ReasonBar::answered, this, [this](const QString& reason) {
    apply(withExclusion(m_model->rows(), m_asked, reason));
    m_view->setFocus();
  });
  connect(m_reasonBar, &ReasonBar::cancelled, m_view, qOverload<>(&QWidget::setFocus));
  connect(m_instrumentBar, &InstrumentBar::chosen, this, &FieldEditor::instrumentChosen);
  const auto popUp = [this](const QWidget* part, const QPoint& at, int column) {
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    fillTableMenu(*menu, *this, column);
    menu->popup(part->mapToGlobal(at));
  };
  m_view->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(m_view, &QWidget::customContextMenuRequested, this, [this, popUp](const QPoint& at) {
    popUp(m_view->viewport(), at, m_view->currentIndex().column());
  });
  QHeaderView* head = m_view->horizontalHeader();
  head->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(head, &QWidget::customContextMenuRequested, this,
          [head, popUp](const QPoint& at) { popUp(head, at, head->logicalIndexAt(at)); });
}

void TableEditor::showValue(const Json& value) {
  m_view->setVisible(!m_fileLine->show(value));
  m_problem->setSentence({});  // it was about what stood here before
  m_model->setRows(rowsOf(value));
  refresh();
}

/// What follows from the rows: hidden columns, the list of rows left out.
void TableEditor::refresh() {
  std::vector<Field> measured;
  for (int c = 0; c < m_model->columnCount(); ++c) {
    const bool isHidden = m_memory.hidden.count(m_model->field(c).key) > 0 && mayHide(c);
    m_view->setColumnHidden(c, isHidden || !m_model->appliesAnywhere(c));
    if (!m_view->isColumnHidden(c)) {
      measured.push_back(m_model->field(c));
    }
  }
  m_view->fitColumns();
  m_instrumentBar->show(measured, m_instruments);
  QStringList left;
  for (std::size_t row = 0; row < m_model->rows().size(); ++row) {
    const QString reason = exclusionOf(m_model->rows()[row]);
    if (!reason.isEmpty()) {
      left << tr("Row %1 is left out: %2.").arg(row + 1).arg(reason);
    }
  }
  m_excluded->setSentence(left.join(' '));
}

void TableEditor::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  m_model->setReadOnly(readOnly);
  m_instrumentBar->setReadOnly(readOnly);
  m_fileLine->setEnabled(!readOnly);
  refresh();
}

void TableEditor::showInstruments(const Json& chosen) {
  m_instruments = chosen;
  refresh();
}

bool TableEditor::commitPending() {
  if (m_view->viewport()->isAncestorOf(QApplication::focusWidget())) {
    m_view->setFocus();  // leaving the cell commits it
  }
  return !std::exchange(m_isRefusalNew, false);
}

void TableEditor::focusOn(int row, const std::string& column) {
  for (int c = 0; row > 0 && c < m_model->columnCount(); ++c) {
    if (m_model->field(c).key == column || (column.empty() && !m_view->isColumnHidden(c))) {
      m_view->goTo(m_model->index(std::min(row, m_model->rowCount()) - 1, c));
      break;
    }
  }
  setFocus(Qt::ShortcutFocusReason);
}

void TableEditor::remember(TableMemory memory) {
  m_memory = std::move(memory);
  m_memory.save(field());
  m_view->setEnterDirection(m_memory.enter);
  refresh();
}

bool TableEditor::mayHide(int column) const {
  return !m_model->field(column).required && m_model->isBlankColumn(column);
}

void TableEditor::apply(const TableChange& change) {
  if (m_readOnly || change.rows == m_model->rows()) {
    return;
  }
  m_problem->setSentence({});
  m_model->setRows(change.rows);
  refresh();
  commit(change.rows.empty() ? Json() : change.rows, change.what);
}

void TableEditor::run(CellCommand command) {
  const int row = m_view->currentIndex().row();
  switch (command) {
    case CellCommand::copy:
      m_view->copyChosen();
      break;
    case CellCommand::cut:
      m_view->copyChosen();
      run(CellCommand::clear);
      break;
    case CellCommand::paste:
      paste();
      break;
    case CellCommand::exclude:
      exclude();
      break;
    case CellCommand::insertRow:
      apply(withRowInserted(m_model->rows(), row));
      break;
    case CellCommand::removeRows:
      apply(withoutRows(m_model->rows(), m_view->selectedRows()));
      break;
    case CellCommand::clear: {
      std::vector<std::pair<int, std::string>> cells;
      for (const QModelIndex& index : m_view->chosenCells()) {
        cells.emplace_back(index.row(), m_model->field(index.column()).key);
      }
      apply(withoutCells(m_model->rows(), cells));
      break;
    }
  }
}

void TableEditor::exclude() {
  std::set<int> rows;
  bool isAnyIncluded = false;
  for (const int row : m_view->selectedRows()) {
    if (!m_model->isEndRow(row) && !isBlankRow(m_model->rows()[static_cast<std::size_t>(row)])) {
      rows.insert(row);
      isAnyIncluded |= exclusionOf(m_model->rows()[static_cast<std::size_t>(row)]).isEmpty();
    }
  }
  if (m_readOnly || rows.empty()) {
    return;
  }
  if (!isAnyIncluded) {
    apply(withExclusion(m_model->rows(), rows, {}));
    return;
  }
  m_asked = rows;
  m_reasonBar->ask(rows.size() == 1 ? tr("Leave out row %1 because").arg(*rows.begin() + 1)
                                    : tr("Leave out %1 rows because").arg(rows.size()),
                   tr("Leave out"));
}

bool TableEditor::handleKey(const QModelIndex& index, QKeyEvent* event) {
  if (isEnter(*event) && m_word.holdsEnter()) {
    return true;
  }
  if (isEnter(*event) && isPlain(*event) && index.isValid() && !m_readOnly &&
      index.column() == captureColumn() && isBlank(m_model->cell(index.row(), index.column()))) {
    chooseFile();
    return true;
  }
  if (!index.isValid() || (index.flags() & Qt::ItemIsEditable) == 0 || !isPrinted(*event)) {
    return false;
  }
  const Field& column = m_model->field(index.column());
  const Json& now = m_model->cell(index.row(), index.column());
  switch (column.kind) {
    case FieldKind::yesNo:
      if (event->key() == Qt::Key_Space) {
        setCell(index, now.is_null() ? Json(true) : now == Json(true) ? Json(false) : Json());
      } else {
        answerByLetter(index, event->text());
      }
      return true;
    case FieldKind::choice:
      if (event->key() == Qt::Key_Space && !m_word.isOpen()) {
        m_view->openCell(index);
      } else {
        answerByLetter(index, event->text());
      }
      return true;
    case FieldKind::capture:
      if (event->key() == Qt::Key_Space) {
        chooseFile();
      }
      return true;  // letters are meant for another cell
    default:
      return false;
  }
}

void TableEditor::answerByLetter(const QModelIndex& index, const QString& letter) {
  const Field& column = m_model->field(index.column());
  setCell(index, m_word.answer(column, m_model->cell(index.row(), index.column()), letter));
  m_problem->setSentence(m_word.problemOf(column));
}

void TableEditor::setCell(const QModelIndex& index, const Json& value) {
  apply(withCell(m_model->rows(), index.row(), m_model->field(index.column()), value));
}

int TableEditor::captureColumn() const {
  for (int c = 0; c < m_model->columnCount(); ++c) {
    if (m_model->field(c).kind == FieldKind::capture) {
      return c;
    }
  }
  return -1;
}

QString TableEditor::pathOf(int row, int column) const {
  return QStringLiteral("%1[%2].%3")
      .arg(QString::fromStdString(field().key))
      .arg(row + 1)
      .arg(QString::fromStdString(m_model->field(column).key));
}

std::vector<const Field*> TableEditor::columnsFrom(int column) const {
  std::vector<const Field*> columns;
  for (int c = column; c < m_model->columnCount(); ++c) {
    if (!m_view->isColumnHidden(c)) {
      columns.push_back(&m_model->field(c));
    }
  }
  return columns;
}

}  // namespace fettle::ui
