#include "ui/forms/entry_box.h"

#include <QKeyEvent>
#include <QSignalBlocker>

#include "ui/forms/entry_order.h"
#include "ui/forms/keys.h"

namespace fettle::ui {

EntryBox::EntryBox(QWidget* parent) : QLineEdit(parent) {}

void EntryBox::showText(const QString& text) {
  const QSignalBlocker blocker(this);
  m_shown = text;
  const int cursor = cursorPosition();
  if (text != this->text()) {
    setText(text);
    setCursorPosition(cursor);
  }
  setModified(false);
  setInvalid(false);
}

void EntryBox::setInvalid(bool invalid) {
  QPalette colours;  // an empty palette inherits everything
  if (invalid) {
    colours.setColor(QPalette::Text, palette().color(QPalette::BrightText));
  }
  setPalette(colours);
}

bool EntryBox::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && !isModified()) {
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  return QLineEdit::event(event);
}

void EntryBox::keyPressEvent(QKeyEvent* event) {
  if (isEnter(*event)) {
    emit leaving();
    if (isModified()) {  // it was refused; what is typed next replaces it
      selectAll();
    } else if (!goOnFrom(*this)) {
      focusNextChild();
    }
    event->accept();
    return;
  }
  if (event->key() == Qt::Key_Escape && isModified()) {
    showText(m_shown);
    selectAll();
    emit restored();
    event->accept();
    return;
  }
  QLineEdit::keyPressEvent(event);
}

void EntryBox::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) {
    emit leaving();
  }
  QLineEdit::focusOutEvent(event);
}

}  // namespace fettle::ui
