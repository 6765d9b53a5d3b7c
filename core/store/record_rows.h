#pragma once
#include <SQLiteCpp/Database.h>

#include "core/history/change.h"

namespace fettle {

// Records as rows; reading them back is history_reading.h. All throw SQLite::Exception.

/// Writes a record in place of whatever has its id.
void writeRecord(SQLite::Database& database, const Record& record);
/// Removes a record and what hangs on it. The machine itself cannot be removed: then nothing happens.
void removeRecord(SQLite::Database& database, const Record& record);
/// Writes the result of a run in place of an earlier one.
void writeEvaluated(SQLite::Database& database, RecordId run, const Evaluated& evaluated);

/// Writes all records and results into empty tables.
void writeHistory(SQLite::Database& database, const History& history);

}  // namespace fettle
