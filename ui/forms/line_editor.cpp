#include "ui/forms/line_editor.h"

#include <QVBoxLayout>

#include "ui/forms/entry_box.h"
#include "ui/forms/field_value.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

LineEditor::LineEditor(Field described, const char* boxName, QWidget* parent)
    : FieldEditor(std::move(described), parent), m_box(new EntryBox) {
  m_box->setObjectName(childName(boxName));
  m_box->setPlaceholderText(valueText(field(), field().fallback));
  nameFor(m_box);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(makeCaption(m_box));
  layout->addWidget(m_box);
  setFocusProxy(m_box);
  connect(m_box, &EntryBox::textEdited, this, &LineEditor::preview);
  connect(m_box, &EntryBox::leaving, this, &LineEditor::commitPending);
  connect(m_box, &EntryBox::restored, this, [this] { setProblem({}); });
}

void LineEditor::setReadOnly(bool readOnly) {
  m_box->setReadOnly(readOnly);
}

void LineEditor::showValue(const Json& value) {
  m_box->showText(valueText(field(), value));
  setProblem({});
}

void LineEditor::preview(const QString& text) {
  const auto read = valueFromText(field(), text);
  setProblem(read || isUnfinished(field(), text) ? QString() : read.error());
}

bool LineEditor::commitPending() {
  if (!m_box->isModified()) {
    return true;
  }
  const auto read = valueFromText(field(), m_box->text());
  if (!read) {
    setProblem(read.error());
    return false;
  }
  m_box->showText(valueText(field(), *read));
  setProblem({});
  commit(*read, label());
  return true;
}

void LineEditor::setProblem(const QString& sentence) {
  m_box->setInvalid(!sentence.isEmpty());
  emit problemChanged(sentence);
}

}  // namespace fettle::ui
