#include "ui/forms/number_editor.h"

#include "ui/forms/entry_box.h"

namespace fettle::ui {

NumberEditor::NumberEditor(Field described, QWidget* parent)
    : LineEditor(std::move(described), "LineEdit", parent) {
  setObjectName(childName("NumberEditor"));
  box().setAlignment(Qt::AlignRight | Qt::AlignVCenter);
}

QSize NumberEditor::sizeHint() const {
  // A number is short: the caption decides how wide the editor is.
  return {minimumSizeHint().width(), LineEditor::sizeHint().height()};
}

}  // namespace fettle::ui
