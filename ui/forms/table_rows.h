#pragma once
#include <QString>
#include <QStringList>
#include <optional>
#include <set>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/field.h"

namespace fettle::ui {

/// Key of a row's member that holds the reason to leave it out.
inline const std::string excludedKey = "excluded";

/// New rows and the words for the undo menu.
struct TableChange {
  Json rows;
  QString what;
};

/// A rectangle of words from the clipboard.
using ClipboardCells = std::vector<QStringList>;

/// The rows of a table value without blank rows at the end; a single object is one row, a reference to a
/// file and null are none.
Json rowsOf(const Json& value);
bool isBlankRow(const Json& row);
/// The reason to leave a row out; empty for a row that counts.
QString exclusionOf(const Json& row);

/// What follows are edits as pure functions: old rows in, new rows out. Rows are counted from 0 here and
/// from 1 in words.
TableChange withCell(const Json& rows, int row, const Field& column, const Json& value);
TableChange withoutCells(const Json& rows, const std::vector<std::pair<int, std::string>>& cells);
TableChange withRowInserted(const Json& rows, int at);
TableChange withoutRows(const Json& rows, const std::set<int>& which);
/// Leaves rows out for a reason, or takes them in again with an empty one. Blank rows stay as they are.
TableChange withExclusion(const Json& rows, const std::set<int>& which, const QString& reason);

/// Cells of a spreadsheet: lines parted by tabs, or by semicolons where there is no tab.
ClipboardCells cellsFromText(const QString& text);
QString textFromCells(const ClipboardCells& cells);

/// Fills cells from (row, first of `columns`) on, adding rows. Refused as a whole, with one sentence
/// naming row, column and text, when a cell cannot be read or the columns do not suffice.
tl::expected<TableChange, QString> withCellsPasted(const Json& rows, int row,
                                                   const std::vector<const Field*>& columns,
                                                   const ClipboardCells& cells);

}  // namespace fettle::ui
