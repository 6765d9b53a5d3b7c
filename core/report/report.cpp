#include "core/report/report.h"

#include <algorithm>
#include <iterator>

namespace fettle {

void append(ReportBlocks& blocks, ReportBlocks more) {
  std::move(more.begin(), more.end(), std::back_inserter(blocks));
}

void dropEmptyColumns(ReportTable& table) {
  for (std::size_t i = table.columns.size(); i-- > 0;) {
    const bool used = std::any_of(table.rows.begin(), table.rows.end(),
                                  [&](const ReportTable::Row& row) { return !row.cells[i].empty(); });
    if (!used) {
      table.columns.erase(table.columns.begin() + static_cast<std::ptrdiff_t>(i));
      for (auto& row : table.rows) {
        row.cells.erase(row.cells.begin() + static_cast<std::ptrdiff_t>(i));
      }
    }
  }
}

}  // namespace fettle
