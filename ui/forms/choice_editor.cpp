#include "ui/forms/choice_editor.h"

#include <QVBoxLayout>

#include "ui/forms/choice_box.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

ChoiceEditor::ChoiceEditor(Field described, QWidget* parent)
    : FieldEditor(std::move(described), parent), m_box(new ChoiceBox(field())) {
  setObjectName(childName("ChoiceEditor"));
  m_box->setObjectName(childName("ComboBox"));
  m_box->showValue({});
  nameFor(m_box);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(makeCaption(m_box));
  layout->addWidget(m_box);
  setFocusProxy(m_box);
  connect(m_box, &ChoiceBox::chosenByUser, this, [this] { commit(m_box->chosen(), label()); });
  connect(m_box, &DropDown::problemChanged, this, [this](const QString& sentence) {
    emit problemChanged(sentence.isEmpty() ? sentence : label() + ": " + sentence);
  });
}

void ChoiceEditor::setReadOnly(bool readOnly) {
  m_box->setReadOnly(readOnly);
}

void ChoiceEditor::showValue(const Json& value) {
  m_box->showValue(value);
}

}  // namespace fettle::ui
