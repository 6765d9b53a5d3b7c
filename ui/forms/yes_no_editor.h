#pragma once
#include "ui/forms/field_editor.h"
#include "ui/forms/typed_word.h"

class QToolButton;

namespace fettle::ui {

/// Yes, no, or not yet answered. Pressing the answer again takes it back; letters and Delete work too.
class YesNoEditor : public FieldEditor {
  Q_OBJECT
 public:
  explicit YesNoEditor(Field field, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;
  QWidgetList entries() const override;

 protected:
  void showValue(const Json& value) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QToolButton* makeButton(bool answer);
  void answer(const Json& value);

  QToolButton* m_yes;
  QToolButton* m_no;
  TypedWord m_word;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
