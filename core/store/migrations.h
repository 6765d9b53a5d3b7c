#pragma once
#include <SQLiteCpp/Database.h>

#include <functional>
#include <string>
#include <vector>

namespace fettle {

/// One step forward in the format: turns version `from` into `from + 1`.
struct Migration {
  int from = 0;
  std::string sql;
  std::function<void(SQLite::Database&)> then = {};  ///< what SQL alone cannot do; after it
};

/// The migrations that lead to the current format.
const std::vector<Migration>& migrations();

}  // namespace fettle
