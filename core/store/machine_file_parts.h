#pragma once
#include <set>

#include "core/history/change.h"
#include "core/store/database.h"
#include "core/store/file_lock.h"
#include "core/store/file_on_disk.h"
#include "core/store/read_only_reason.h"

namespace fettle {

/// What an open machine file holds; for the sources of MachineFile only.
struct MachineFileParts {
  MachineFileParts(std::string place, SQLite::Database connection)
      : path(std::move(place)), database(std::move(connection)) {}

  std::string path;
  FileLock lock;
  mutable SQLite::Database database;  ///< of an older file that is not written: its migrated copy in memory
  ReadOnlyReason readOnly = ReadOnlyReason::none;

  History history;
  std::vector<std::string> losses;
  std::set<RecordId> held;  ///< runs whose results are not on disk yet

  // As they were when the history was read; another program has written when they differ.
  FileIdentity identity;
  std::int64_t dataVersion = 0;
  /// Changes whose transaction failed: as a rule they are not on disk, after a failed sync one may be.
  std::vector<Change> doubtful;

  /// SQLite's count of what other connections wrote.
  std::int64_t currentDataVersion() const { return database.execAndGet("PRAGMA data_version").getInt64(); }
};

}  // namespace fettle
