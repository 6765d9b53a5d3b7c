#pragma once
#include "ui/forms/field_editor.h"

class QToolButton;

namespace fettle::ui {

/// Yes, no, or not yet answered. Pressing the answer again takes it back; Y, N and Delete work too.
class YesNoEditor : public FieldEditor {
  Q_OBJECT
 public:
  explicit YesNoEditor(Field field, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;
  QWidgetList entries() const override;

 protected:
  void showValue(const Json& value) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QToolButton* makeButton(bool answer);
  void answer(const Json& value);

  QToolButton* m_yes;
  QToolButton* m_no;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
