#include "ui/forms/field_editor.h"

#include "ui/forms/field_value.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

FieldEditor::FieldEditor(Field field, QWidget* parent) : QWidget(parent), m_field(std::move(field)) {}

void FieldEditor::setValue(const Json& value) {
  if (value == m_value) {
    return;
  }
  m_value = value;
  showValue(m_value);
}

void FieldEditor::focusOn(int /*row*/, const std::string& /*column*/) {
  setFocus(Qt::ShortcutFocusReason);  // what stands there is selected: typing replaces it
}

void FieldEditor::commit(const Json& value, const QString& what) {
  if (value == m_value) {
    return;
  }
  m_value = value;  // first, so that an owner who answers at once finds it shown
  emit committed(value, what);
}

SmallLabel* FieldEditor::makeCaption(QWidget* buddy) {
  auto* caption = new SmallLabel(captionOf(m_field));
  caption->setBuddy(buddy);
  caption->setToolTip(QString::fromStdString(m_field.help));
  return caption;
}

void FieldEditor::nameFor(QWidget* widget) const {
  widget->setAccessibleName(captionOf(m_field));
  widget->setAccessibleDescription(QString::fromStdString(m_field.help));
  widget->setToolTip(QString::fromStdString(m_field.help));
}

QString FieldEditor::childName(const char* ending) const {
  return objectNameOf(m_field.key) + QLatin1String(ending);
}

}  // namespace fettle::ui
