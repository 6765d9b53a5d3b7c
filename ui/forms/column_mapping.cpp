#include "ui/forms/column_mapping.h"

#include <QGridLayout>
#include <QSignalBlocker>
#include <algorithm>

#include "core/history/intake_reference.h"
#include "core/measure/unit.h"
#include "ui/forms/drop_down.h"
#include "ui/forms/field_value.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

constexpr const char* clockUnit = "clock";  // hours, minutes, seconds as written

QString headWords(const ColumnHead& head, std::size_t index) {
  QString words = QString::number(index + 1);
  if (!head.header.empty()) {
    words += QStringLiteral(": ") + QString::fromStdString(head.header);
  }
  return head.unit.empty() ? words : words + QStringLiteral(" ") + QString::fromStdString(head.unit);
}

QString labelOf(const WantedColumn& wanted) {
  return QString::fromStdString(wanted.label.empty() ? wanted.key : wanted.label);
}

}  // namespace

ColumnMapping::ColumnMapping(const Field& field, QWidget* parent)
    : QWidget(parent), m_wanted(wantedColumns(field)) {
  auto* layout = new QGridLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setHorizontalSpacing(9);
  layout->setVerticalSpacing(4);
  layout->addWidget(new SmallLabel(tr("needed")), 0, 0);
  layout->addWidget(new SmallLabel(tr("column of the text")), 0, 1);
  layout->addWidget(new SmallLabel(tr("unit there")), 0, 2);
  layout->setColumnStretch(1, 1);
  for (const WantedColumn& wanted : m_wanted) {
    const Field* column = findField(field.columns, wanted.key);
    addLine(*layout, wanted, column != nullptr && column->required);
  }
}

void ColumnMapping::addLine(QGridLayout& layout, const WantedColumn& wanted, bool isNeeded) {
  const Line line{new DropDown, new DropDown};
  const int row = static_cast<int>(m_lines.size()) + 1;
  const QString name = objectNameOf(wanted.key);
  line.column->setObjectName(name + "ColumnComboBox");
  line.column->setAccessibleName(tr("column for %1").arg(labelOf(wanted)));
  line.unit->setObjectName(name + "UnitComboBox");
  line.unit->setAccessibleName(tr("unit of %1").arg(labelOf(wanted)));
  auto* label = new QLabel(isNeeded ? labelOf(wanted) : tr("%1 (if there)").arg(labelOf(wanted)));
  label->setBuddy(line.column);
  layout.addWidget(label, row, 0);
  layout.addWidget(line.column, row, 1);
  layout.addWidget(line.unit, row, 2);
  m_lines.push_back(line);
  const auto at = m_lines.size() - 1;
  connect(line.column, &QComboBox::activated, this, [this, at] {
    m_lines[at].isChosen = true;
    offerUnits(at, {});
    emit changed();
  });
  connect(line.unit, &QComboBox::activated, this, &ColumnMapping::changed);
}

void ColumnMapping::show(const TablePreview& preview) {
  const bool isSameShape = m_heads.size() == preview.heads.size();
  m_heads = preview.heads;
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    DropDown* box = m_lines[i].column;
    m_lines[i].isChosen = m_lines[i].isChosen && isSameShape;
    const int before = isSameShape ? box->currentIndex() : 0;
    const QString unitBefore = m_lines[i].unit->currentData().toString();
    box->clear();
    box->addItem(QStringLiteral("–"));
    for (std::size_t c = 0; c < m_heads.size(); ++c) {
      box->addItem(headWords(m_heads[c], c));
    }
    const auto match = std::find_if(preview.suggested.begin(), preview.suggested.end(),
                                    [&](const ColumnMatch& m) { return m.key == m_wanted[i].key; });
    const bool isFound = match != preview.suggested.end();
    if (before > 0 || m_lines[i].isChosen) {
      box->setCurrentIndex(before);
      offerUnits(i, unitBefore.toStdString());
      continue;
    }
    box->setCurrentIndex(isFound ? static_cast<int>(match->column) + 1 : 0);
    offerUnits(i, isFound ? match->unit : std::string());
  }
}

/// Units of the wanted dimension; of a clock column only the clock. Without a unit given, what the head of
/// the column says, else the wanted one.
void ColumnMapping::offerUnits(std::size_t index, const std::string& given) {
  const WantedColumn& wanted = m_wanted[index];
  DropDown* box = m_lines[index].unit;
  box->clear();
  const auto dimension = wanted.dimension();
  const int column = m_lines[index].column->currentIndex() - 1;
  box->setEnabled(column >= 0 && dimension.has_value());
  if (column < 0 || !dimension) {
    return;
  }
  const ColumnHead& head = m_heads[static_cast<std::size_t>(column)];
  const bool isClock = head.kind == ColumnKind::clock;
  for (const Unit& unit : unitsOf(*dimension)) {
    if ((unit.key == clockUnit) == isClock) {
      const std::string key(unit.key);
      const std::string shown = displayUnit(key);
      box->addItem(QString::fromStdString(shown.empty() ? key : shown), QString::fromStdString(key));
    }
  }
  const auto named = unitFromText(unitOf(head, dimension), dimension);
  const std::string key = !given.empty() ? given : named ? std::string(named->key) : wanted.unit;
  box->setCurrentIndex(std::max(0, box->findData(QString::fromStdString(key))));
}

void ColumnMapping::describe(Json& reference) const {
  Json columns = Json::object(), units = Json::object();
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    const int column = m_lines[i].column->currentIndex();
    columns[m_wanted[i].key] = column > 0 ? Json(column) : Json();
    if (column > 0 && m_lines[i].unit->isEnabled()) {
      units[m_wanted[i].key] = m_lines[i].unit->currentData().toString().toStdString();
    }
  }
  reference["columns"] = columns;
  reference["units"] = units;
}

QStringList ColumnMapping::missing() const {
  QStringList labels;
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    if (m_wanted[i].required && m_lines[i].column->currentIndex() <= 0) {
      labels << labelOf(m_wanted[i]);
    }
  }
  return labels;
}

}  // namespace fettle::ui
