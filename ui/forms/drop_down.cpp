#include "ui/forms/drop_down.h"

#include <QKeyEvent>
#include <QWheelEvent>

#include "ui/forms/focus_frame.h"
#include "ui/forms/input_form.h"

namespace fettle::ui {

DropDown::DropDown(QWidget* parent) : QComboBox(parent) {
  setFocusPolicy(Qt::StrongFocus);
}

void DropDown::keyPressEvent(QKeyEvent* event) {
  const bool isPlain =
      (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier | Qt::AltModifier)) == 0;
  const int key = event->key();
  const bool isSpace = key == Qt::Key_Space && !m_word.isOpen();
  if (key == Qt::Key_Return || key == Qt::Key_Enter) {
    if (event->modifiers() & Qt::ControlModifier) {
      event->ignore();
    } else if (!InputForm::goOnFrom(*this)) {
      focusNextChild();
    }
  } else if (isPlain && (key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_F4 || isSpace)) {
    if (!m_readOnly) {
      showPopup();
    }
  } else if (isPlain && !event->text().isEmpty() && event->text().front().isPrint()) {
    takeLetter(event->text());
  } else {
    event->ignore();  // the page keys scroll the page
  }
}

void DropDown::takeLetter(const QString& letter) {
  if (m_readOnly) {
    return;
  }
  QStringList words;
  for (int i = 0; i < count(); ++i) {
    words << itemText(i);
  }
  const int wanted = m_word.add(words, currentIndex(), letter);
  if (wanted != currentIndex()) {
    setCurrentIndex(wanted);
    emit activated(wanted);
  }
  emit problemChanged(m_word.problem());
}

void DropDown::wheelEvent(QWheelEvent* event) {
  event->ignore();
}

void DropDown::mousePressEvent(QMouseEvent* event) {
  if (!m_readOnly) {
    QComboBox::mousePressEvent(event);
  }
}

void DropDown::focusOutEvent(QFocusEvent* event) {
  m_word.end();
  emit problemChanged({});
  QComboBox::focusOutEvent(event);
}

void DropDown::paintEvent(QPaintEvent* event) {
  QComboBox::paintEvent(event);
  drawFocusFrame(*this);
}

}  // namespace fettle::ui
