#include "core/store/schema.h"

#include "core/store/record_table.h"

namespace fettle {
namespace {

constexpr const char* derivedSql = R"(
CREATE TABLE results(run INTEGER PRIMARY KEY REFERENCES step_runs(id) ON DELETE CASCADE, result TEXT NOT NULL,
                     problem TEXT NOT NULL, evaluated_with TEXT NOT NULL, inputs_hash TEXT NOT NULL,
                     program_version TEXT NOT NULL, verdict TEXT NOT NULL);
CREATE TABLE quantities(run INTEGER NOT NULL REFERENCES results(run) ON DELETE CASCADE,
                        position INTEGER NOT NULL, id TEXT NOT NULL, value REAL, unit TEXT NOT NULL, u REAL,
                        dof REAL, low REAL, high REAL, why TEXT NOT NULL,
                        PRIMARY KEY(run, position)) WITHOUT ROWID;
CREATE TABLE proposals(run INTEGER NOT NULL REFERENCES results(run) ON DELETE CASCADE,
                       position INTEGER NOT NULL, setting TEXT NOT NULL, found_number REAL,
                       found_text TEXT NOT NULL, force_number REAL, force_text TEXT NOT NULL, number REAL, text TEXT NOT NULL, unit TEXT NOT NULL, u REAL,
                       expanded REAL, PRIMARY KEY(run, position)) WITHOUT ROWID;
)";

constexpr const char* filesSql = R"(
CREATE TABLE blobs(sha256 TEXT PRIMARY KEY, name TEXT NOT NULL, size INTEGER NOT NULL, bytes BLOB NOT NULL);
)";

}  // namespace

const std::string& recordsAndResultsSql() {
  // Records first, as their fields say (record_table.h); then what is derived from them, and the files
  // taken in.
  static const std::string sql = [] {
    std::string records;
    for (const auto& table : recordTables()) {
      records += createSql(table);
    }
    return records + derivedSql;
  }();
  return sql;
}

const std::string& schemaSql() {
  static const std::string sql = recordsAndResultsSql() + filesSql;
  return sql;
}

}  // namespace fettle
