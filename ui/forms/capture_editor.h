#pragma once
#include "ui/forms/field_editor.h"
#include "ui/forms/form_context.h"

class QLabel;
class QPushButton;

namespace fettle::ui {

class SmallLabel;

/// Names the file a capture comes from and asks for another one, by button, drop or paste. It reads no
/// file: it tells which was chosen, and the owner sets the value.
class CaptureEditor : public FieldEditor {
  Q_OBJECT
 public:
  CaptureEditor(Field field, const FormContext& context, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;

 protected:
  void showValue(const Json& value) override;
  void keyPressEvent(QKeyEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void choose();
  void take(const QStringList& files);

  const FormContext& m_context;
  QLabel* m_name;
  SmallLabel* m_rows;
  QPushButton* m_choose;
  QPushButton* m_remove;
};

}  // namespace fettle::ui
