#pragma once
#include <Eigen/Core>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace fettle {

/// What every row of a table has besides its columns.
struct TableRow {
  std::size_t number = 0;               ///< row as the user counts, from 1
  std::optional<std::string> excluded;  ///< the user's reason to leave the row out; it stays in the file

  friend bool operator==(const TableRow&, const TableRow&) = default;
};

/// The rows that count.
template <typename Row>
std::vector<Row> included(const std::vector<Row>& rows) {
  std::vector<Row> kept;
  for (const auto& row : rows) {
    if (!row.excluded) {
      kept.push_back(row);
    }
  }
  return kept;
}

/// Heights over a rectangular net: one row of z per y. Both x and y rise; NaN marks a cell that is blank or
/// refused.
struct GridReadings {
  std::vector<double> x, y;
  Eigen::MatrixXd z;
  bool empty() const { return z.size() == 0; }
};

/// One line of a checklist.
struct ChecklistAnswer {
  std::string item;  ///< key
  std::optional<bool> ok;
  std::string remark, initials, time;
};

}  // namespace fettle
