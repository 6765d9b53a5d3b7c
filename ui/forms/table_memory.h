#pragma once
#include <QString>
#include <set>
#include <string>

#include "core/fields/field.h"
#include "ui/forms/cell_view.h"

namespace fettle::ui {

/// How somebody likes to see a table; remembered for the program, not in the machine file.
struct TableMemory {
  CellView::Direction enter = CellView::Direction::right;
  std::set<std::string> hidden;  ///< keys of columns that are not shown while they are blank

  static TableMemory load(const Field& table);
  void save(const Field& table) const;
};

}  // namespace fettle::ui
