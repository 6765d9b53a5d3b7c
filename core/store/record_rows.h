#pragma once
#include <SQLiteCpp/Database.h>

#include "core/history/change.h"
#include "core/history/history.h"

namespace fettle {

// Records as rows. All throw SQLite::Exception.

/// Writes a record in place of whatever has its id.
void writeRecord(SQLite::Database& database, const Record& record);
void removeRecord(SQLite::Database& database, const Record& record);
void writeEvaluated(SQLite::Database& database, RecordId run, const Evaluated& evaluated);

// Reading, one table family each, so that a damaged file gives what it can.
MachineRecord readMachine(SQLite::Database& database);
std::vector<PartChange> readPartChanges(SQLite::Database& database);
std::vector<Session> readSessions(SQLite::Database& database);
std::vector<StepRun> readRuns(SQLite::Database& database);
std::vector<StepMark> readMarks(SQLite::Database& database);
std::map<RecordId, Evaluated> readEvaluated(SQLite::Database& database);

}  // namespace fettle
