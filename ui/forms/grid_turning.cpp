#include "ui/forms/grid_turning.h"

#include <QVBoxLayout>
#include <algorithm>

#include "ui/forms/cell_view.h"
#include "ui/forms/field_value.h"
#include "ui/forms/grid_model.h"
#include "ui/forms/input_form.h"
#include "ui/forms/small_editor.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

Field choice(const char* key, const QString& label, const QString& usual, const QString& turned) {
  Field field;
  field.key = key;
  field.kind = FieldKind::choice;
  field.label = label.toStdString();
  field.choices = {{"no", usual.toStdString()}, {"yes", turned.toStdString()}};
  field.fallback = "no";
  return field;
}

Field positions(const char* key, const QString& label, const QString& help) {
  Field field;
  field.key = key;
  field.kind = FieldKind::text;
  field.label = label.toStdString();
  field.help = help.toStdString();
  return field;
}

/// The choice that says from which end an axis begins.
const char* turnOf(GridAxis axis) {
  return axis == GridAxis::x ? "right_to_left" : "back_row_first";
}

constexpr const char* turns[] = {"columns_first", "back_row_first", "right_to_left"};

}  // namespace

GridTurning::GridTurning(const Field& field, QWidget* parent)
    : QWidget(parent),
      m_form(new InputForm(&makeSmallEditor)),
      m_model(new GridModel(field, this)),
      m_view(new CellView),
      m_front(new SmallLabel(tr("front of the bed"))) {
  const QString help = tr("In the order of the text, such as 15 150 285, or 15..285 for even distances.");
  m_form->setFields({choice("columns_first", tr("a line of the text is"), tr("one y"), tr("one x")),
                     choice("back_row_first", tr("it begins"), tr("at the front"), tr("at the back")),
                     choice("right_to_left", tr("and runs"), tr("left to right"), tr("right to left")),
                     positions("x", tr("positions in x, mm"), help),
                     positions("y", tr("positions in y, mm"), help)});
  m_model->setReadOnly(true);
  m_view->setObjectName("turnedGridTableView");
  m_view->setAccessibleName(tr("the grid as it will be taken in"));
  m_view->setModel(m_model);
  m_view->setCornerText(QStringLiteral("y \\ x"));
  m_view->setMostRows(8);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(4);
  layout->addWidget(m_form);
  layout->addWidget(m_view);
  layout->addWidget(m_front, 0, Qt::AlignHCenter);
  connect(m_form, &InputForm::edited, this, [this](const QString& key, const Json& value, const QString&) {
    take(key.toStdString(), value);
  });
}

void GridTurning::setRemembered(const Json& reference) {
  for (const char* key : turns) {
    if (memberOf(reference, key) == Json(true)) {
      m_values[key] = "yes";
    }
  }
}

bool GridTurning::runsAcross(GridAxis axis) const {
  return (axis == GridAxis::x) != (memberOf(m_values, "columns_first") == Json("yes"));
}

const std::vector<double>& GridTurning::inText(GridAxis axis) const {
  return runsAcross(axis) ? m_text.across : m_text.down;
}

std::size_t GridTurning::countOf(GridAxis axis) const {
  const std::size_t lines = m_text.rows.size();
  const std::size_t cells = lines == 0 ? 0 : m_text.rows.front().size();
  return runsAcross(axis) ? cells : lines;
}

/// Positions the text itself holds need none to be typed; else what a comment says, else those known.
QString GridTurning::suggested(GridAxis axis) const {
  const bool isX = axis == GridAxis::x;
  if (!inText(axis).empty()) {
    return {};
  }
  if (const auto& range = isX ? m_text.x : m_text.y) {
    return QStringLiteral("%1..%2").arg(numberText(range->first), numberText(range->last));
  }
  const auto& known = isX ? m_known.x : m_known.y;
  return known.size() == countOf(axis) ? positionsText(known) : QString();
}

void GridTurning::show(const GridText& text) {
  m_text = text;
  for (const auto& [key, axis] : {std::pair{"x", GridAxis::x}, std::pair{"y", GridAxis::y}}) {
    const QString words = suggested(axis);
    if (!words.isEmpty()) {
      m_values[key] = words.toStdString();
    } else {
      m_values.erase(key);
    }
  }
  read();
}

void GridTurning::take(const std::string& key, const Json& value) {
  m_values[key] = value;
  read();
  for (const GridAxis axis : {GridAxis::x, GridAxis::y}) {
    if (key == turnOf(axis) && value != Json("yes")) {
      turnTyped(axis);
    }
  }
  emit changed();
}

void GridTurning::read() {
  m_problem.clear();
  Json shown = m_values;
  for (const auto& [axis, list] : {std::pair{GridAxis::x, &m_x}, std::pair{GridAxis::y, &m_y}}) {
    const Json& typed = memberOf(m_values, axis == GridAxis::x ? "x" : "y");
    const auto found = positionsFromText(valueText({}, typed), countOf(axis));
    *list = found ? found->rising : std::vector<double>();
    if (!found) {
      m_problem = tr("Positions in %1: %2").arg(axis == GridAxis::x ? "x" : "y", found.error());
    } else if (found->wereFalling) {
      std::reverse(list->begin(), list->end());
    }
    const auto& positions = list->empty() ? inText(axis) : *list;
    if (!positions.empty() && (list->empty() || positions.front() > positions.back())) {
      shown[turnOf(axis)] = positions.front() > positions.back() ? "yes" : "no";
    }
  }
  m_form->setValues(shown);
}

void GridTurning::turnTyped(GridAxis axis) {
  auto& typed = axis == GridAxis::x ? m_x : m_y;
  if (!typed.empty() && typed.front() > typed.back()) {
    std::reverse(typed.begin(), typed.end());
    m_values[axis == GridAxis::x ? "x" : "y"] = positionsText(typed).toStdString();
    read();
  }
}

void GridTurning::describe(Json& reference) const {
  for (const char* key : turns) {
    if (memberOf(m_values, key) == Json("yes")) {
      reference[key] = true;
    }
  }
  for (const auto& [key, list] : {std::pair{"x", &m_x}, std::pair{"y", &m_y}}) {
    if (!list->empty()) {
      reference[key] = *list;
    }
  }
}

void GridTurning::showResult(const Json& grid) {
  m_model->setGrid(GridValue::fromJson(grid));
  const bool isThere = m_model->rowCount() > 0;
  m_view->setVisible(isThere);
  m_front->setVisible(isThere);
}

}  // namespace fettle::ui
