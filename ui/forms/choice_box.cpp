#include "ui/forms/choice_box.h"

#include <QSignalBlocker>

namespace fettle::ui {
namespace {

// The items hold the keys as text; the entry for "not chosen" holds none.
Json keyOf(const QVariant& data) {
  return data.isValid() ? Json(data.toString().toStdString()) : Json();
}

}  // namespace

ChoiceBox::ChoiceBox(const Field& field, QWidget* parent) : DropDown(parent), m_fallback(field.fallback) {
  if (m_fallback.is_null()) {
    addItem(QStringLiteral("–"));
    setItemData(0, tr("not chosen"), Qt::AccessibleTextRole);
  }
  for (const auto& choice : field.choices) {
    addItem(QString::fromStdString(choice.label), QString::fromStdString(choice.key));
  }
  setSizeAdjustPolicy(QComboBox::AdjustToContents);
  connect(this, &QComboBox::activated, this, &ChoiceBox::chosenByUser);
}

void ChoiceBox::showValue(const Json& value) {
  const QSignalBlocker blocker(this);
  const Json& counts = value.is_null() ? m_fallback : value;
  int wanted = 0;
  for (int i = 0; i < count(); ++i) {
    if (keyOf(itemData(i)) == counts) {
      wanted = i;
    }
  }
  setCurrentIndex(wanted);
}

Json ChoiceBox::chosen() const {
  return keyOf(currentData());
}

}  // namespace fettle::ui
