#include "ui/bench/notes_editor.h"

#include <QSignalBlocker>

namespace fettle::ui {

NotesEditor::NotesEditor(QWidget* parent) : QPlainTextEdit(parent) {
  setObjectName("notesEditor");
  setAccessibleName(tr("Notes"));
  setPlaceholderText(tr("What you saw, changed or doubted."));
  setTabChangesFocus(true);
  m_timer.setSingleShot(true);
  m_timer.setInterval(1000);
  connect(this, &QPlainTextEdit::textChanged, this, [this] {
    if (!m_timer.isActive()) {
      m_timer.start();
    }
  });
  connect(&m_timer, &QTimer::timeout, this, &NotesEditor::commitPending);
}

void NotesEditor::showText(const QString& text) {
  m_committed = text;
  if (text == toPlainText()) {
    return;
  }
  const QSignalBlocker quiet(this);
  m_timer.stop();
  setPlainText(text);
}

void NotesEditor::commitPending() {
  m_timer.stop();
  const QString text = toPlainText();
  if (text != m_committed) {
    m_committed = text;
    emit committed(text);
  }
}

void NotesEditor::focusOutEvent(QFocusEvent* event) {
  commitPending();
  QPlainTextEdit::focusOutEvent(event);
}

}  // namespace fettle::ui
