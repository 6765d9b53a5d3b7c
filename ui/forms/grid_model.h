#pragma once
#include <QAbstractTableModel>

#include "ui/forms/grid_value.h"

namespace fettle::ui {

/// Heights as the bed lies before you: the highest y on top, x to the right, positions in the headers.
class GridModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  explicit GridModel(const Field& grid, QObject* parent = nullptr);
  void setGrid(const GridValue& grid);
  const GridValue& grid() const { return m_grid; }
  const Field& height() const { return m_field; }
  void setReadOnly(bool readOnly) { m_readOnly = readOnly; }
  /// The line of y that a row of the table shows.
  std::size_t lineOf(int row) const { return m_grid.y.size() - 1 - static_cast<std::size_t>(row); }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void heightEdited(int row, int column, std::optional<double> height);

 private:
  std::optional<double> heightAt(const QModelIndex& index) const;
  int decimalsFor(const GridValue& grid) const;

  Field m_field;
  int m_decimals = 0;  ///< of every height, so that decimal points stand under each other
  GridValue m_grid;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
