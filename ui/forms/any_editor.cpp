#include "ui/forms/any_editor.h"

#include "ui/forms/capture_editor.h"
#include "ui/forms/checklist_editor.h"
#include "ui/forms/grid_editor.h"
#include "ui/forms/small_editor.h"
#include "ui/forms/table_editor.h"

namespace fettle::ui {

FieldEditor* makeAnyEditor(const Field& field, const FormContext& context) {
  switch (field.kind) {
    case FieldKind::table:
      return new TableEditor(field, context);
    case FieldKind::capture:
      return new CaptureEditor(field, context);
    case FieldKind::grid:
      return new GridEditor(field, context);
    case FieldKind::checklist:
      return new ChecklistEditor(field, context);
    default:
      return makeSmallEditor(field, context);
  }
}

}  // namespace fettle::ui
