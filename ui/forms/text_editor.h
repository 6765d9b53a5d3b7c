#pragma once
#include "ui/forms/line_editor.h"

namespace fettle::ui {

/// A line of words.
class TextEditor : public LineEditor {
  Q_OBJECT
 public:
  explicit TextEditor(Field field, QWidget* parent = nullptr);
};

}  // namespace fettle::ui
