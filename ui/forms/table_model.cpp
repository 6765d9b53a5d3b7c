#include "ui/forms/table_model.h"

#include <QFont>
#include <algorithm>

#include "core/measure/format.h"
#include "ui/forms/field_value.h"
#include "ui/forms/table_rows.h"

namespace fettle::ui {
namespace {

constexpr int mostColumnDecimals = 6;

}  // namespace

TableModel::TableModel(std::vector<Field> columns, QObject* parent)
    : QAbstractTableModel(parent), m_columns(std::move(columns)) {
  renewDecimals();
}

void TableModel::setRows(const Json& rows) {
  if (rows == m_rows) {
    return;
  }
  changeRowCount(rows);
  m_rows = rows;
  renewDecimals();
  emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  emit headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
}

/// Tells views where rows come or go: in the middle when only that differs, else at the end. The blank row
/// a reading is typed into becomes a row, and another one follows it.
void TableModel::changeRowCount(const Json& rows) {
  const auto before = static_cast<int>(m_rows.size()), after = static_cast<int>(rows.size());
  const int common = std::min(before, after);
  const auto prefix = static_cast<int>(
      std::mismatch(m_rows.begin(), m_rows.begin() + common, rows.begin()).first - m_rows.begin());
  const bool tailIsSame =
      std::equal(m_rows.end() - (common - prefix), m_rows.end(), rows.end() - (common - prefix));
  const int at = tailIsSame ? prefix : common;
  const int first = at == common && !m_readOnly ? at + 1 : at;
  if (after > before) {
    beginInsertRows({}, first, first + after - before - 1);
    m_rows = rows;
    endInsertRows();
  } else if (after < before) {
    beginRemoveRows({}, first, first + before - after - 1);
    m_rows = rows;
    endRemoveRows();
  }
}

void TableModel::setReadOnly(bool readOnly) {
  if (readOnly != m_readOnly) {
    beginResetModel();
    m_readOnly = readOnly;
    endResetModel();
  }
}

const Json& TableModel::row(int number) const {
  static const Json blank = Json::object();
  return isEndRow(number) ? blank : m_rows[static_cast<std::size_t>(number)];
}

const Json& TableModel::cell(int number, int column) const {
  return memberOf(row(number), field(column).key);
}

bool TableModel::applies(int number, int column) const {
  return fettle::applies(field(column), row(number), m_columns);
}

bool TableModel::appliesAnywhere(int column) const {
  for (int r = 0; r < rowCount(); ++r) {
    if (applies(r, column)) {
      return true;
    }
  }
  return rowCount() == 0;
}

bool TableModel::isBlankColumn(int column) const {
  return std::all_of(m_rows.begin(), m_rows.end(),
                     [&](const Json& r) { return isBlank(memberOf(r, field(column).key)); });
}

int TableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size()) + (m_readOnly ? 0 : 1);
}

int TableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

void TableModel::renewDecimals() {
  m_decimals.assign(m_columns.size(), 0);
  for (std::size_t c = 0; c < m_columns.size(); ++c) {
    const auto& instrument = m_columns[c].instrument;
    if (m_columns[c].unit.empty()) {
      continue;  // every row has a unit of its own: nothing to line up
    }
    int decimals = instrument ? decimalsOf(instrument->r) : 0;
    for (const Json& r : m_rows) {
      const Json& value = memberOf(r, m_columns[c].key);
      decimals = std::max(decimals, value.is_number() ? decimalsOf(value.get<double>()) : 0);
    }
    m_decimals[c] = std::min(decimals, mostColumnDecimals);
  }
}

QString TableModel::shown(int number, int column) const {
  const Json& value = cell(number, column);
  const Field& described = field(column);
  if (isBlank(value)) {
    if (described.kind == FieldKind::capture && !m_readOnly && applies(number, column)) {
      return tr("Enter: choose a file…");
    }
    return isEndRow(number) || !applies(number, column) ? QString()
                                                        : valueText(described, described.fallback);
  }
  if (!value.is_number()) {
    return valueText(described, value);
  }
  const QString exact = numberText(value.get<double>());
  const int decimals = m_decimals[static_cast<std::size_t>(column)];
  return exact.contains('e') || decimalsOf(value.get<double>()) > decimals
             ? exact
             : QString::fromStdString(formatFixed(value.get<double>(), decimals));
}

QString TableModel::spoken(int number, int column) const {
  const QString text = shown(number, column);
  const QString place = tr("row %1, %2: %3")
                            .arg(number + 1)
                            .arg(captionOf(field(column)), text.isEmpty() ? tr("blank") : text);
  const QString reason = exclusionOf(row(number));
  return reason.isEmpty() ? place : place + ", " + tr("left out: %1").arg(reason);
}

QVariant TableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) {
    return {};
  }
  const int r = index.row(), c = index.column();
  switch (role) {
    case Qt::DisplayRole:
      return shown(r, c);
    case Qt::EditRole:
      return valueText(field(c), cell(r, c));
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::Alignment(
          Qt::AlignVCenter | (field(c).kind == FieldKind::number ? Qt::AlignRight : Qt::AlignLeft)));
    case Qt::ToolTipRole: {
      const QString reason = exclusionOf(row(r));
      return reason.isEmpty() ? QString() : tr("Left out: %1").arg(reason);
    }
    case Qt::AccessibleTextRole:
      return spoken(r, c);
    case DimRole:
      return isBlank(cell(r, c)) || !applies(r, c);
    case ExcludedRole:
      return !exclusionOf(row(r)).isEmpty();
    default:
      return {};
  }
}

bool TableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  const auto read = role == Qt::EditRole ? valueFromText(field(index.column()), value.toString())
                                         : tl::expected<Json, QString>(Json());
  if (!read || role != Qt::EditRole) {
    return false;
  }
  if (*read != cell(index.row(), index.column())) {
    emit cellEdited(index.row(), index.column(), *read);
  }
  return true;
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) {
    if (role == Qt::FontRole && !exclusionOf(row(section)).isEmpty()) {
      QFont font;
      font.setStrikeOut(true);
      return font;
    }
    return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
  }
  switch (role) {
    case Qt::DisplayRole:
      return captionOf(field(section));
    case Qt::ToolTipRole:
      return QString::fromStdString(field(section).help);
    case Qt::TextAlignmentRole:
      return static_cast<int>(field(section).kind == FieldKind::number ? Qt::AlignRight : Qt::AlignLeft) |
             static_cast<int>(Qt::AlignVCenter) | static_cast<int>(Qt::TextWordWrap);
    default:
      return {};
  }
}

Qt::ItemFlags TableModel::flags(const QModelIndex& index) const {
  const Qt::ItemFlags seen = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  const bool editable = !m_readOnly && index.isValid() && applies(index.row(), index.column());
  return editable ? seen | Qt::ItemIsEditable : seen;
}

}  // namespace fettle::ui
