#include <QApplication>
#include <QClipboard>
#include <QMimeData>
#include <algorithm>

#include "core/measure/number_text.h"
#include "ui/forms/dropped_files.h"
#include "ui/forms/field_value.h"
#include "ui/forms/intake_dialog.h"
#include "ui/forms/small_label.h"
#include "ui/forms/table_editor.h"
#include "ui/forms/table_model.h"
#include "ui/forms/table_rows.h"

namespace fettle::ui {
namespace {

/// Whether a pasted line names columns: words, no number.
bool isHeading(const QStringList& cells) {
  return std::none_of(cells.begin(), cells.end(), [](const QString& cell) {
    return numberFromKeyboard(cell.trimmed().toStdString()).has_value();
  });
}

}  // namespace

void TableEditor::paste() {
  if (m_readOnly) {
    return;
  }
  const QMimeData* clipboard = QApplication::clipboard()->mimeData();
  const QModelIndex at = m_view->chosenCells().value(0, m_model->index(0, 0));
  if (const QStringList files = filesIn(clipboard); !files.isEmpty()) {
    openFiles(files, at.row());
    return;
  }
  if (clipboard->text().trimmed().isEmpty()) {
    return;
  }
  const ClipboardCells cells = cellsFromText(clipboard->text());
  const auto change = withCellsPasted(m_model->rows(), at.row(), columnsFrom(at.column()), cells);
  if (change) {
    apply(*change);
  } else if (cells.size() > 1 && isHeading(cells.front()) && !holdsCaptures()) {
    openText(tr("clipboard"), clipboard->text().toStdString());  // it tells which columns these are
  } else {
    m_problem->setSentence(change.error());
  }
}

void TableEditor::openText(const QString& name, const std::string& bytes) {
  auto* dialog = new IntakeDialog(field(), name, bytes, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this, [this, dialog] {
    apply({dialog->value(), tr("paste into %1").arg(label())});
  });
  dialog->open();
}

void TableEditor::chooseFile() {
  if (!m_readOnly && m_context.chooseFiles) {
    openFiles(m_context.chooseFiles(this, tr("Choose a file for %1").arg(label())),
              std::max(0, m_view->currentIndex().row()));
  }
}

void TableEditor::openFiles(const QStringList& files, int row) {
  if (m_readOnly || files.isEmpty()) {
    return;
  }
  if (!holdsCaptures()) {
    emit tableFileChosen(files.front());
    return;
  }
  for (int i = 0; i < files.size(); ++i) {
    emit fileChosen(pathOf(row + i, captureColumn()), files[i]);
  }
  if (row < m_model->rowCount() && !isBlank(m_model->cell(row, captureColumn()))) {
    m_view->goTo(m_model->index(row, captureColumn()));
    m_view->move(CellView::Way::onward);  // what the file holds is said next
  }
}

}  // namespace fettle::ui
