#pragma once

namespace fettle {
struct Field;
}

namespace fettle::ui {

class FieldEditor;
struct FormContext;

/// Whether several editors of a field find room side by side: numbers, choices, words, yes and no.
bool isSmall(const Field& field);

/// The editor of a small field; null for others. For the forms of dialogs.
FieldEditor* makeSmallEditor(const Field& field, const FormContext& context);

}  // namespace fettle::ui
