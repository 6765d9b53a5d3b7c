#include "ui/forms/small_editor.h"

#include "ui/forms/choice_editor.h"
#include "ui/forms/number_editor.h"
#include "ui/forms/text_editor.h"
#include "ui/forms/yes_no_editor.h"

namespace fettle::ui {

bool isSmall(const Field& field) {
  return field.kind == FieldKind::number || field.kind == FieldKind::choice ||
         field.kind == FieldKind::text || field.kind == FieldKind::yesNo;
}

FieldEditor* makeSmallEditor(const Field& field, const FormContext& /*context*/) {
  switch (field.kind) {
    case FieldKind::number:
      return new NumberEditor(field);
    case FieldKind::choice:
      return new ChoiceEditor(field);
    case FieldKind::text:
      return new TextEditor(field);
    case FieldKind::yesNo:
      return new YesNoEditor(field);
    default:
      return nullptr;
  }
}

}  // namespace fettle::ui
