#pragma once
#include "ui/forms/line_editor.h"

namespace fettle::ui {

/// A number: decimal comma and point, bounds and whole numbers as described, the value that counts while
/// blank as placeholder.
class NumberEditor : public LineEditor {
  Q_OBJECT
 public:
  explicit NumberEditor(Field field, QWidget* parent = nullptr);
  QSize sizeHint() const override;
};

}  // namespace fettle::ui
