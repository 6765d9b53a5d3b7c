#pragma once
#include <QString>
#include <QStringList>
#include <optional>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/field.h"
#include "ui/forms/table_rows.h"

namespace fettle::ui {

/// A grid while it is being entered: both lists of positions rise, heights may be blank.
struct GridValue {
  std::vector<double> x, y;
  std::vector<std::vector<std::optional<double>>> z;  ///< a row per y, a column per x

  /// Falling positions are turned; what fits no grid is left out.
  static GridValue fromJson(const Json& value);
  /// Null when there is nothing at all.
  Json toJson() const;
  bool isEmpty() const { return x.empty() && y.empty(); }
  friend bool operator==(const GridValue&, const GridValue&) = default;
};

/// One height of a grid as a number field.
Field heightField(const Field& grid);

enum class GridAxis { x, y };

/// The grid with other positions: as many as before move the lines, another number of them keeps heights
/// where a position stays.
GridValue withPositions(const GridValue& grid, GridAxis axis, const std::vector<double>& positions);

/// Heights from the clipboard, put down from (row, column) on as the table shows them: the back on top.
/// Refused as a whole, with one sentence, when a cell is no number or lies beyond the grid.
tl::expected<GridValue, QString> withHeightsPasted(const GridValue& grid, const Field& field, int row,
                                                   int column, const ClipboardCells& cells);

/// Positions as typed: "15 69 123", "15; 69,5; 123" or, where the number of lines is known or given behind
/// a colon, "15..285" and "15..285: 6". @return rising positions and whether they were typed falling, or
/// one sentence
struct Positions {
  std::vector<double> rising;
  bool wereFalling = false;
};
tl::expected<Positions, QString> positionsFromText(const QString& text, std::size_t count = 0);
QString positionsText(const std::vector<double>& positions);

}  // namespace fettle::ui
