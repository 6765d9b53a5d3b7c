#include "ui/forms/text_editor.h"

namespace fettle::ui {

TextEditor::TextEditor(Field described, QWidget* parent)
    : LineEditor(std::move(described), "LineEdit", parent) {
  setObjectName(childName("TextEditor"));
}

}  // namespace fettle::ui
