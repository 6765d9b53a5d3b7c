#include "ui/forms/grid_model.h"

#include <algorithm>

#include "core/measure/format.h"
#include "ui/forms/field_value.h"

namespace fettle::ui {
namespace {

constexpr int mostDecimals = 4;

}  // namespace

GridModel::GridModel(const Field& grid, QObject* parent)
    : QAbstractTableModel(parent), m_field(heightField(grid)) {}

void GridModel::setGrid(const GridValue& grid) {
  if (grid == m_grid) {
    return;
  }
  m_decimals = decimalsFor(grid);
  if (grid.x == m_grid.x && grid.y == m_grid.y) {
    m_grid = grid;
    emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    return;
  }
  beginResetModel();
  m_grid = grid;
  endResetModel();
}

int GridModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_grid.y.size());
}

int GridModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_grid.x.size());
}

std::optional<double> GridModel::heightAt(const QModelIndex& index) const {
  return m_grid.z[lineOf(index.row())][static_cast<std::size_t>(index.column())];
}

int GridModel::decimalsFor(const GridValue& grid) const {
  int most = m_field.instrument ? decimalsOf(m_field.instrument->r) : 0;
  for (const auto& row : grid.z) {
    for (const auto& value : row) {
      most = std::max(most, value ? decimalsOf(*value) : 0);
    }
  }
  return std::min(most, mostDecimals);
}

QVariant GridModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) {
    return {};
  }
  const auto value = heightAt(index);
  switch (role) {
    case Qt::DisplayRole:
      return value ? QString::fromStdString(formatFixed(*value, m_decimals)) : QString();
    case Qt::EditRole:
      return value ? numberText(*value) : QString();
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | Qt::AlignRight));
    case Qt::AccessibleTextRole:
      return tr("x %1, y %2: %3")
          .arg(headerData(index.column(), Qt::Horizontal).toString(),
               headerData(index.row(), Qt::Vertical).toString(), value ? numberText(*value) : tr("blank"));
    default:
      return {};
  }
}

bool GridModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  const auto read = valueFromText(m_field, value.toString());
  if (role != Qt::EditRole || !read) {
    return false;
  }
  const auto given = read->is_number() ? std::optional(read->get<double>()) : std::nullopt;
  if (given != heightAt(index)) {
    emit heightEdited(index.row(), index.column(), given);
  }
  return true;
}

QVariant GridModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (role == Qt::TextAlignmentRole) {
    return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | Qt::AlignRight));
  }
  if (role != Qt::DisplayRole) {
    return {};
  }
  return numberText(orientation == Qt::Horizontal ? m_grid.x[static_cast<std::size_t>(section)]
                                                  : m_grid.y[lineOf(section)]);
}

Qt::ItemFlags GridModel::flags(const QModelIndex& index) const {
  const Qt::ItemFlags seen = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  return index.isValid() && !m_readOnly ? seen | Qt::ItemIsEditable : seen;
}

}  // namespace fettle::ui
