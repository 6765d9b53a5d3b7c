#pragma once
#include <QKeyEvent>

namespace fettle::ui {

/// Return, or Enter of the number pad.
inline bool isEnter(const QKeyEvent& key) {
  return key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
}

/// Pressed with nothing held down but Shift; keys of the number pad too.
inline bool isPlain(const QKeyEvent& key) {
  return (key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
}

/// Pressed plainly and types something that is seen.
inline bool isPrinted(const QKeyEvent& key) {
  return isPlain(key) && !key.text().isEmpty() && key.text().front().isPrint();
}

}  // namespace fettle::ui
