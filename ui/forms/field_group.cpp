#include "ui/forms/field_group.h"

#include <QVBoxLayout>

#include "ui/forms/field_editor.h"
#include "ui/forms/flow_layout.h"
#include "ui/forms/instrument_bar.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

constexpr int cellWidth = 92;  // four to the narrowest column of work

}  // namespace

FieldGroup::FieldGroup(const FormContext& context, QWidget* parent)
    : QWidget(parent),
      m_flow(new FlowLayout(cellWidth)),
      m_problem(new SmallLabel({}, SmallLabel::Tone::fault)),
      m_instruments(new InstrumentBar(context)) {
  m_problem->setObjectName("fieldProblem");
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addLayout(m_flow);
  layout->addWidget(m_problem);
  layout->addWidget(m_instruments);
}

void FieldGroup::add(FieldEditor* editor) {
  m_flow->addWidget(editor);
  m_editors.push_back(editor);
  connect(editor, &FieldEditor::problemChanged, this, [this, editor](const QString& sentence) {
    m_problems[editor] = sentence;
    showProblem();
  });
}

void FieldGroup::showProblem() {
  QStringList sentences;
  for (FieldEditor* editor : m_editors) {
    const auto found = m_problems.find(editor);
    if (found != m_problems.end() && !found->second.isEmpty() && !editor->isHidden()) {
      sentences << found->second;
    }
  }
  m_problem->setSentence(sentences.join('\n'));
}

void FieldGroup::showInstruments(const Json& chosen) {
  m_chosen = chosen;
  refresh();
}

void FieldGroup::setReadOnly(bool readOnly) {
  m_instruments->setReadOnly(readOnly);
}

void FieldGroup::refresh() {
  std::vector<Field> seen;
  for (const FieldEditor* editor : m_editors) {
    if (!editor->isHidden()) {
      seen.push_back(editor->field());
    }
  }
  m_instruments->show(seen, m_chosen);
  m_flow->invalidate();
  showProblem();
  setVisible(!seen.empty());
}

}  // namespace fettle::ui
