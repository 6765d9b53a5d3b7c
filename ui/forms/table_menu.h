#pragma once

class QMenu;

namespace fettle::ui {

class TableEditor;

/// Fills the menu of a table: clipboard, rows, instruments (those of one column, or of all with -1), which
/// columns are seen, where Enter goes.
void fillTableMenu(QMenu& menu, TableEditor& table, int column);

}  // namespace fettle::ui
