#include "ui/forms/even_grid_dialog.h"

#include <QDialogButtonBox>
#include <QEvent>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/intake/height_grid.h"
#include "ui/forms/field_value.h"
#include "ui/forms/grow_to_contents.h"
#include "ui/forms/input_form.h"
#include "ui/forms/small_editor.h"

namespace fettle::ui {
namespace {

Field number(const char* key, const QString& label, const std::string& unit) {
  Field field;
  field.key = key;
  field.label = label.toStdString();
  field.unit = unit;
  field.required = true;
  return field;
}

Field count(const char* key, const QString& label) {
  Field field = number(key, label, {});
  field.whole = true;
  field.minimum = 2;
  field.maximum = 500;
  return field;
}

Json valuesOf(const GridValue& grid) {
  Json values = Json::object();
  for (const auto& [name, positions] : {std::pair{"x", &grid.x}, std::pair{"y", &grid.y}}) {
    if (positions->size() > 1) {
      values[std::string(name) + "_first"] = positions->front();
      values[std::string(name) + "_last"] = positions->back();
      values[std::string(name) + "_count"] = positions->size();
    }
  }
  return values;
}

}  // namespace

EvenGridDialog::EvenGridDialog(const GridValue& grid, const std::string& unit, QWidget* parent)
    : QDialog(parent), m_form(new InputForm(&makeSmallEditor)), m_values(valuesOf(grid)) {
  setObjectName("evenGridDialog");
  setWindowTitle(tr("Even grid"));
  m_form->setFields({number("x_first", tr("x from"), unit), number("x_last", tr("x to"), unit),
                     count("x_count", tr("lines in x")), number("y_first", tr("y from"), unit),
                     number("y_last", tr("y to"), unit), count("y_count", tr("lines in y"))});
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  m_ok->setObjectName("evenGridOkButton");
  buttons->button(QDialogButtonBox::Ok)->setText(tr("Lay out"));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(18, 18, 18, 18);
  layout->addWidget(m_form);
  layout->addWidget(buttons);
  resize(340, 160);  // three boxes to a line
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_form, &InputForm::edited, this, [this](const QString& key, const Json& value, const QString&) {
    take(key.toStdString(), value);
  });
  m_form->setValues(m_values);
  m_ok->setEnabled(m_values.size() == 6);
}

void EvenGridDialog::take(const std::string& key, const Json& value) {
  if (value.is_null()) {
    m_values.erase(key);
  } else {
    m_values[key] = value;
  }
  m_form->setValues(m_values);
  const auto rises = [&](const char* first, const char* last) {
    return m_values.contains(first) && m_values.contains(last) && m_values[first] < m_values[last];
  };
  m_ok->setEnabled(m_values.size() == 6 && rises("x_first", "x_last") && rises("y_first", "y_last"));
}

/// Grows for the sentences that refuse what was typed.
bool EvenGridDialog::event(QEvent* event) {
  const bool isHandled = QDialog::event(event);
  if (event->type() == QEvent::LayoutRequest) {
    growToContents(*this);
  }
  return isHandled;
}

std::vector<double> EvenGridDialog::positions(GridAxis axis) const {
  const std::string name = axis == GridAxis::x ? "x" : "y";
  return evenPositions(m_values.value(name + "_first", 0.0), m_values.value(name + "_last", 0.0),
                       m_values.value(name + "_count", std::size_t{2}));
}

}  // namespace fettle::ui
