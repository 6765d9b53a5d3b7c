#pragma once
#include <QWidget>
#include <map>
#include <vector>

#include "core/measure/json.h"
#include "ui/forms/form_context.h"

class QVBoxLayout;

namespace fettle::ui {

class FieldEditor;
class FlowLayout;
class InstrumentBar;
class SmallLabel;

/// Numbers, choices and words that follow each other, side by side, with their instruments and the reason
/// why what is typed cannot be accepted below them.
class FieldGroup : public QWidget {
  Q_OBJECT
 public:
  explicit FieldGroup(const FormContext& context, QWidget* parent = nullptr);
  void add(FieldEditor* editor);
  void showInstruments(const Json& chosen);
  void setReadOnly(bool readOnly);
  /// Hides the group when none of its editors is seen, and renews what depends on which are.
  void refresh();
  InstrumentBar& instrumentBar() { return *m_instruments; }

 private:
  void showProblem();

  std::vector<FieldEditor*> m_editors;
  std::map<FieldEditor*, QString> m_problems;
  FlowLayout* m_flow;
  SmallLabel* m_problem;
  InstrumentBar* m_instruments;
  Json m_chosen;
};

}  // namespace fettle::ui
