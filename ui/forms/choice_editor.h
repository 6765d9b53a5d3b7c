#pragma once
#include "ui/forms/field_editor.h"

namespace fettle::ui {

class ChoiceBox;

/// One of several words.
class ChoiceEditor : public FieldEditor {
  Q_OBJECT
 public:
  explicit ChoiceEditor(Field field, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;

 protected:
  void showValue(const Json& value) override;

 private:
  ChoiceBox* m_box;
};

}  // namespace fettle::ui
