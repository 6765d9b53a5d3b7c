#pragma once
#include <functional>

namespace fettle {
struct Field;
}

namespace fettle::ui {

class FieldEditor;
struct FormContext;

/// Makes the editor of a field; null for kinds of fields that the form does not have. A form is given one,
/// so that the dialogs of an editor may hold forms themselves.
using EditorMaker = std::function<FieldEditor*(const Field&, const FormContext&)>;

}  // namespace fettle::ui
