#pragma once
#include "core/measure/json.h"
#include "ui/forms/cell_view.h"
#include "ui/forms/table_memory.h"

class QMenu;

namespace fettle::ui {

class InstrumentBar;
class TableModel;

/// What the menu of a table shows and does; keys do the same.
class TableActions {
 public:
  virtual ~TableActions() = default;
  virtual void run(CellCommand command) = 0;
  virtual void chooseFile() = 0;
  virtual bool isReadOnly() const = 0;
  virtual const TableMemory& memory() const = 0;
  virtual void remember(TableMemory memory) = 0;
  /// Whether the user may hide the column: nothing in it and nothing needed.
  virtual bool mayHide(int column) const = 0;
  virtual const TableModel& model() const = 0;
  /// The inputs' "instruments".
  virtual const Json& instruments() const = 0;
  virtual InstrumentBar& instrumentBar() = 0;
};

/// Fills the menu of a table: clipboard, rows, instruments (those of one column, or of all with -1), which
/// columns are seen, where Enter goes.
void fillTableMenu(QMenu& menu, TableActions& table, int column);

}  // namespace fettle::ui
