#include "ui/forms/grid_editor.h"

#include <QApplication>
#include <QClipboard>
#include <QGridLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QMimeData>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/forms/cell_delegate.h"
#include "ui/forms/dropped_files.h"
#include "ui/forms/entry_box.h"
#include "ui/forms/even_grid_dialog.h"
#include "ui/forms/field_value.h"
#include "ui/forms/file_line.h"
#include "ui/forms/grid_model.h"
#include "ui/forms/instrument_bar.h"
#include "ui/forms/intake_dialog.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

GridEditor::GridEditor(Field described, const FormContext& context, QWidget* parent)
    : FieldEditor(std::move(described), parent),
      m_context(context),
      m_model(new GridModel(field(), this)),
      m_view(new CellView),
      m_x(makeAxisBox(GridAxis::x)),
      m_y(makeAxisBox(GridAxis::y)),
      m_fileLine(new FileLine(objectNameOf(field().key))),
      m_body(new QWidget),
      m_problem(new SmallLabel({}, SmallLabel::Tone::fault)),
      m_front(new SmallLabel(tr("front of the bed"))),
      m_instrumentBar(new InstrumentBar(context)) {
  setObjectName(childName("GridEditor"));
  m_view->setObjectName(childName("TableView"));
  m_problem->setObjectName(childName("Problem"));
  m_view->setModel(m_model);
  m_view->setCornerText(QStringLiteral("y \\ x"));
  nameFor(m_view);
  m_view->setToolTip({});
  setFocusProxy(m_x);
  build();
  connectParts();
  refresh();
}

EntryBox* GridEditor::makeAxisBox(GridAxis axis) {
  auto* box = new EntryBox;
  const QString name = axis == GridAxis::x ? QStringLiteral("x") : QStringLiteral("y");
  box->setObjectName(childName(axis == GridAxis::x ? "XLineEdit" : "YLineEdit"));
  box->setAccessibleName(tr("%1: positions in %2").arg(captionOf(field()), name));
  box->setPlaceholderText(tr("15  150  285 or 15..285: 5"));
  connect(box, &EntryBox::leaving, this, [this, axis] { commitAxis(axis); });
  box->installEventFilter(this);
  connect(box, &EntryBox::restored, this, [this] { m_problem->setSentence({}); });
  connect(box, &QLineEdit::textEdited, this, [this, axis](const QString& text) {
    const auto read =
        positionsFromText(text, (axis == GridAxis::x ? m_model->grid().x : m_model->grid().y).size());
    const QChar last = text.isEmpty() ? QChar() : text.back();
    m_problem->setSentence(read || last == '-' || last == '.' ? QString() : read.error());
  });
  return box;
}

void GridEditor::build() {
  auto* menuButton = new QToolButton;
  menuButton->setText(QStringLiteral("⋯"));
  menuButton->setAutoRaise(true);
  menuButton->setObjectName(childName("MenuButton"));
  menuButton->setAccessibleName(tr("%1: what the grid can do").arg(label()));
  menuButton->setToolTip(menuButton->accessibleName());
  menuButton->setPopupMode(QToolButton::InstantPopup);
  auto* menu = new QMenu(menuButton);
  connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillMenu(*menu); });
  menuButton->setMenu(menu);

  auto* even = new QPushButton(tr("Even grid…"));
  even->setObjectName(childName("EvenButton"));
  connect(even, &QPushButton::clicked, this, &GridEditor::layOutEvenly);

  auto* head = new QHBoxLayout;
  head->addWidget(makeCaption(m_x), 1);
  head->addWidget(menuButton);
  auto* axes = new QGridLayout;
  axes->setSpacing(4);
  int row = 0;
  for (const auto& [name, box] : {std::pair{"x", m_x}, std::pair{"y", m_y}}) {
    auto* caption = new SmallLabel(QString::fromLatin1(name));
    caption->setBuddy(box);
    axes->addWidget(caption, row, 0);
    axes->addWidget(box, row, 1);
    ++row;
  }
  axes->addWidget(even, 0, 2);
  auto* body = new QVBoxLayout(m_body);
  body->setContentsMargins(0, 0, 0, 0);
  body->setSpacing(2);
  body->addLayout(axes);
  body->addWidget(m_view);
  body->addWidget(m_front, 0, Qt::AlignHCenter);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addLayout(head);
  for (QWidget* part : std::initializer_list<QWidget*>{m_fileLine, m_body, m_problem, m_instrumentBar}) {
    layout->addWidget(part);
  }
}

void GridEditor::connectParts() {
  auto* delegate = new CellDelegate([this](const QModelIndex&) { return &m_model->height(); }, this);
  m_view->setItemDelegate(delegate);
  connect(delegate, &CellDelegate::left, m_view, &CellView::go);
  connect(delegate, &CellDelegate::problemChanged, m_problem, &SmallLabel::setSentence);
  connect(m_view, &CellView::commanded, this, &GridEditor::run);
  connect(m_view, &CellView::filesDropped, this, [this](const QStringList& files) {
    if (!m_readOnly && !files.isEmpty()) {
      emit tableFileChosen(files.front());
    }
  });
  connect(m_model, &GridModel::heightEdited, this,
          [this](int row, int column, std::optional<double> height) {
            GridValue grid = m_model->grid();
            grid.z[m_model->lineOf(row)][static_cast<std::size_t>(column)] = height;
            take(grid, tr("%1, x %2 y %3")
                           .arg(label(), m_model->headerData(column, Qt::Horizontal).toString(),
                                m_model->headerData(row, Qt::Vertical).toString()));
          });
  connect(m_fileLine, &FileLine::typeInstead, this, [this] {
    commit({}, tr("%1, typed instead of a file").arg(label()));
    showValue(value());
  });
  connect(m_instrumentBar, &InstrumentBar::chosen, this, &FieldEditor::instrumentChosen);
}

void GridEditor::fillMenu(QMenu& menu) {
  menu.clear();
  menu.addAction(tr("Copy"), m_view, &CellView::copyChosen);
  menu.addAction(tr("Paste heights"), this, &GridEditor::paste);
  menu.addAction(tr("Paste a whole grid…"), this, &GridEditor::pasteWhole);
  menu.addAction(tr("Take from a file…"), this, &GridEditor::chooseFile);
  menu.addAction(tr("Clear the grid"), this, [this] { take({}, tr("clear %1").arg(label())); });
  for (QAction* action : menu.actions().mid(1)) {
    action->setEnabled(!m_readOnly);
  }
}

void GridEditor::showValue(const Json& value) {
  const bool isFile = m_fileLine->show(value);
  m_body->setVisible(!isFile);
  m_model->setGrid(isFile ? GridValue() : GridValue::fromJson(value));
  refresh();
}

void GridEditor::refresh() {
  const GridValue& grid = m_model->grid();
  for (const auto& [box, positions] : {std::pair{m_x, &grid.x}, std::pair{m_y, &grid.y}}) {
    if (!box->isModified() || !box->hasFocus()) {
      box->showText(positionsText(*positions));
    }
  }
  const bool isNet = !grid.x.empty() && !grid.y.empty();
  m_view->setVisible(isNet);
  m_front->setVisible(isNet);
  m_instrumentBar->show({field()}, m_instruments);
}

void GridEditor::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  m_model->setReadOnly(readOnly);
  m_x->setReadOnly(readOnly);
  m_y->setReadOnly(readOnly);
  m_fileLine->setEnabled(!readOnly);
  m_instrumentBar->setReadOnly(readOnly);
  findChild<QPushButton*>(childName("EvenButton"))->setEnabled(!readOnly);
}

void GridEditor::showInstruments(const Json& chosen) {
  m_instruments = chosen;
  refresh();
}

bool GridEditor::commitPending() {
  commitAxis(GridAxis::x);
  commitAxis(GridAxis::y);
  if (m_view->viewport()->isAncestorOf(QApplication::focusWidget())) {
    m_view->setFocus();
  }
  return m_problem->text().isEmpty();
}

void GridEditor::commitAxis(GridAxis axis) {
  EntryBox* box = axis == GridAxis::x ? m_x : m_y;
  if (!box->isModified()) {
    return;
  }
  const GridValue& grid = m_model->grid();
  const auto positions = positionsFromText(box->text(), (axis == GridAxis::x ? grid.x : grid.y).size());
  box->setInvalid(!positions);
  m_problem->setSentence(positions ? QString() : positions.error());
  if (positions) {
    box->showText(positionsText(positions->rising));
    take(withPositions(grid, axis, positions->rising),
         tr("%1, positions in %2").arg(label(), axis == GridAxis::x ? "x" : "y"));
  }
}

void GridEditor::take(const GridValue& grid, const QString& what) {
  if (m_readOnly || grid == m_model->grid()) {
    return;
  }
  m_problem->setSentence({});
  m_model->setGrid(grid);
  refresh();
  commit(grid.toJson(), what);
}

void GridEditor::run(CellCommand command) {
  switch (command) {
    case CellCommand::cut:
      m_view->copyChosen();
      clear();
      break;
    case CellCommand::copy:
      m_view->copyChosen();
      break;
    case CellCommand::paste:
      paste();
      break;
    case CellCommand::clear:
      clear();
      break;
    default:
      break;  // lines come and go with their positions
  }
}

QWidgetList GridEditor::entries() const {
  return {m_x, m_y, m_view};
}

/// Lines on the clipboard are a whole grid also where one list of positions is typed.
bool GridEditor::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && !m_readOnly &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Paste)) {
    const QMimeData* clipboard = QApplication::clipboard()->mimeData();
    if (const QStringList files = filesIn(clipboard); !files.isEmpty()) {
      emit tableFileChosen(files.front());
      return true;
    }
    if (clipboard->text().trimmed().contains('\n')) {
      pasteWhole();
      return true;
    }
  }
  return FieldEditor::eventFilter(watched, event);
}

void GridEditor::pasteWhole() {
  openText(tr("clipboard"), QApplication::clipboard()->text().toStdString());
}

void GridEditor::clear() {
  GridValue grid = m_model->grid();
  for (const QModelIndex& index : m_view->chosenCells()) {
    grid.z[m_model->lineOf(index.row())][static_cast<std::size_t>(index.column())].reset();
  }
  take(grid, tr("clear cells in %1").arg(label()));
}

void GridEditor::paste() {
  const QMimeData* clipboard = QApplication::clipboard()->mimeData();
  if (m_readOnly) {
    return;
  }
  if (const QStringList files = filesIn(clipboard); !files.isEmpty()) {
    emit tableFileChosen(files.front());
    return;
  }
  const ClipboardCells cells = cellsFromText(clipboard->text());
  const QModelIndex at = m_view->chosenCells().value(0);
  const auto lines = static_cast<int>(cells.size());
  const bool fits = at.isValid() && at.row() + lines <= m_model->rowCount() &&
                    at.column() + cells.front().size() <= m_model->columnCount();
  if (!fits) {
    pasteWhole();
    return;
  }
  const auto grid = withHeightsPasted(m_model->grid(), m_model->height(), at.row(), at.column(), cells);
  if (grid) {
    take(*grid, tr("paste into %1").arg(label()));
  } else {
    m_problem->setSentence(grid.error());
  }
}

void GridEditor::openText(const QString& name, const std::string& bytes) {
  auto* dialog = new IntakeDialog(field(), name, bytes, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setPositions(m_model->grid());
  connect(dialog, &QDialog::accepted, this,
          [this, dialog] { take(GridValue::fromJson(dialog->value()), tr("paste %1").arg(label())); });
  dialog->open();
}

void GridEditor::layOutEvenly() {
  auto* dialog = new EvenGridDialog(m_model->grid(), field().unit, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this, [this, dialog] {
    const GridValue inX = withPositions(m_model->grid(), GridAxis::x, dialog->positions(GridAxis::x));
    take(withPositions(inX, GridAxis::y, dialog->positions(GridAxis::y)), tr("%1, even grid").arg(label()));
  });
  dialog->open();
}

void GridEditor::chooseFile() {
  if (!m_readOnly && m_context.chooseFiles) {
    const QStringList files = m_context.chooseFiles(this, tr("Choose a file for %1").arg(label()));
    if (!files.isEmpty()) {
      emit tableFileChosen(files.front());
    }
  }
}

}  // namespace fettle::ui
