#pragma once
#include "ui/forms/field_editor.h"
#include "ui/forms/form_context.h"

class QKeyEvent;
class QModelIndex;

namespace fettle::ui {

class ChecklistModel;
class ChecklistView;

/// A list of things to look at. Space says ok and goes on, X says not ok and goes to the remark, Delete
/// takes the answer back, any other letter begins a remark. Initials and time are put down with the answer.
class ChecklistEditor : public FieldEditor {
  Q_OBJECT
 public:
  ChecklistEditor(Field field, const FormContext& context, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;
  bool commitPending() override;
  void focusOn(int row, const std::string& column) override;

 protected:
  void showValue(const Json& value) override;

 private:
  /// From the remark back to the answer of the same item.
  void toAnswer();
  bool handleKey(const QModelIndex& index, QKeyEvent* event);
  Json answerObject(int row) const;
  void answer(int row, const Json& ok);
  void takeRemark(int row, const QString& remark);
  void put(int row, Json answer, const QString& what);

  const FormContext& m_context;
  ChecklistModel* m_model;
  ChecklistView* m_view;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
