#pragma once
#include <SQLiteCpp/Database.h>

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace fettle {

/// Marks a SQLite file as a machine file: "FTL1" in ASCII.
inline constexpr std::int32_t applicationId = 0x46544C31;

/// One step forward in the format: turns version `from` into `from + 1`.
struct Migration {
  int from = 0;
  std::string sql;
  std::function<void(SQLite::Database&)> then = {};  ///< what SQL alone cannot do; after it
};

/// The tables of the current format.
const std::string& schemaSql();
/// The same without the files taken in, which no format has changed yet.
const std::string& recordsAndResultsSql();

/// The migrations that lead to the current format.
const std::vector<Migration>& migrations();

}  // namespace fettle
