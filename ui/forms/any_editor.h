#pragma once

namespace fettle {
struct Field;
}

namespace fettle::ui {

class FieldEditor;
struct FormContext;

/// The editor of a field of any kind.
FieldEditor* makeAnyEditor(const Field& field, const FormContext& context);

}  // namespace fettle::ui
