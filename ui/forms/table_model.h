#pragma once
#include <QAbstractTableModel>
#include <vector>

#include "core/fields/field.h"

namespace fettle::ui {

/// The rows of a table as cells: one column per field, one blank row at the end to go on in. It holds
/// what it was given; an edited cell is told and not kept.
class TableModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Role {
    DimRole = Qt::UserRole,  ///< the cell shows what counts while it is blank, or does not count
    ExcludedRole,            ///< the row is left out
  };

  explicit TableModel(std::vector<Field> columns, QObject* parent = nullptr);

  /// Replaces the rows; views keep their current cell, selection and scroll position.
  void setRows(const Json& rows);
  const Json& rows() const { return m_rows; }
  void setReadOnly(bool readOnly);

  const Field& field(int column) const { return m_columns[static_cast<std::size_t>(column)]; }
  const std::vector<Field>& fields() const { return m_columns; }
  const Json& cell(int row, int column) const;
  bool isEndRow(int row) const { return row >= static_cast<int>(m_rows.size()); }
  /// Whether the column counts in this row beside its other cells.
  bool applies(int row, int column) const;
  /// Whether it counts in any row.
  bool appliesAnywhere(int column) const;
  bool isBlankColumn(int column) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void cellEdited(int row, int column, const fettle::Json& value);

 private:
  const Json& row(int number) const;
  QString shown(int row, int column) const;
  QString spoken(int row, int column) const;
  void renewDecimals();
  void changeRowCount(const Json& rows);

  std::vector<Field> m_columns;
  std::vector<int> m_decimals;  ///< of each column, so that decimal points stand under each other
  Json m_rows = Json::array();
  bool m_readOnly = false;
};

}  // namespace fettle::ui
