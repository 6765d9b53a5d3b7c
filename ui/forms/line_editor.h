#pragma once
#include "ui/forms/field_editor.h"

namespace fettle::ui {

class EntryBox;

/// One line: what number and text editors have in common. A keystroke is read and judged, leaving commits.
class LineEditor : public FieldEditor {
  Q_OBJECT
 public:
  LineEditor(Field field, const char* boxName, QWidget* parent);
  void setReadOnly(bool readOnly) override;
  bool commitPending() override;

 protected:
  void showValue(const Json& value) override;
  EntryBox& box() { return *m_box; }

 private:
  void preview(const QString& text);
  void setProblem(const QString& sentence);

  EntryBox* m_box;
};

}  // namespace fettle::ui
