#pragma once
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include <map>
#include <string>
#include <vector>

#include "core/history/change.h"

namespace fettle {

/// How one kind of record is kept: a row of a table with a column for each field; lists and maps in tables
/// of their own that hang on the row by "owner". A number is REAL, a word TEXT, the value of a setting a
/// number or a text as it is; what is described elsewhere is kept as JSON.
struct RecordTable {
  std::string name;   ///< "step_runs"
  std::string label;  ///< "the step records"
  std::vector<Field> fields;
  bool ofSession = false;  ///< its records belong to a session
};

/// The tables of all kinds of records, each after those it refers to.
const std::vector<RecordTable>& recordTables();
const RecordTable& tableOf(const MachineRecord&);
const RecordTable& tableOf(const PartChange&);
const RecordTable& tableOf(const Session&);
const RecordTable& tableOf(const StepRun&);
const RecordTable& tableOf(const StepMark&);

/// SQL that makes the table and those that hang on it.
std::string createSql(const RecordTable& table);
/// Adds the columns and tables a file lacks that was made before a field was there. Throws
/// SQLite::Exception.
void addWhatIsLacking(SQLite::Database& database);

/// The name of the table of a list or map: "step_runs_adopted".
std::string partName(const RecordTable& table, const Field& field);
/// Lists and maps, each in a table of its own.
bool hasOwnTable(const Field& field);

/// Writes a row in place of the one of that id. Throws SQLite::Exception.
void writeRow(SQLite::Database& database, const RecordTable& table, RecordId id, RecordId session,
              const Json& record);

/// The fields of the row a statement stands on; columns that no field has are passed over. Throws
/// Json::exception where JSON is broken.
Json rowToJson(SQLite::Statement& row, const std::vector<Field>& fields);

}  // namespace fettle
