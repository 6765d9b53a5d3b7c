#pragma once
#include <cstdint>
#include <string>
#include <vector>

namespace fettle {

/// Marks a SQLite file as a machine file: "FTL1" in ASCII.
inline constexpr std::int32_t applicationId = 0x46544C31;

/// One step forward in the format: SQL that turns version `from` into `from + 1`.
struct Migration {
  int from = 0;
  std::string sql;
};

/// The tables of the current format.
const std::string& schemaSql();

/// The migrations that lead to the current format; none yet.
const std::vector<Migration>& migrations();

}  // namespace fettle
