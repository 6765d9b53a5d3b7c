#pragma once
#include <QString>
#include <string>
#include <vector>

#include "core/fields/field.h"
#include "core/intake/column_map.h"
#include "core/intake/file_bytes.h"
#include "core/measure/json.h"

namespace fettle::tests {

/// Rows of a file as an array of objects keyed by the columns of a table field, found by their headers.
/// The error is the sentence of the reading.
inline tl::expected<Json, std::string> tableOfFile(const QString& path, const Field& table) {
  std::vector<WantedColumn> wanted;
  for (const auto& column : table.columns) {
    wanted.push_back({column.key, column.label, column.unit, column.required, false, column.aliases});
  }
  const auto bytes = readFileBytes(path.toStdString());
  if (!bytes) {
    return tl::unexpected(bytes.error().sentence);
  }
  const auto read = readColumns(*bytes, wanted);
  if (!read) {
    return tl::unexpected(read.error().sentence);
  }
  Json rows = Json::array();
  for (const auto& column : read->columns) {
    for (std::size_t row = 0; row < column.values.size(); ++row) {
      rows[row][column.key] = column.values[row];
    }
  }
  return rows;
}

}  // namespace fettle::tests
