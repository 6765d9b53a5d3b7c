#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>

#include <filesystem>

#include "core/measure/text.h"
#include "core/store/history_reading.h"
#include "core/store/machine_file.h"
#include "core/store/machine_file_parts.h"
#include "core/store/migration.h"
#include "core/store/record_rows.h"
#include "core/store/record_table.h"
#include "core/store/schema.h"

namespace fettle {
namespace {

/// Pages larger than SQLite's 4 kB halve the time of the check at every opening.
constexpr int pageSize = 8192;

void writeNew(const std::string& path, const History& history, const Blobs& blobs) {
  SQLite::Database database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  database.exec(fmt::format("PRAGMA page_size={}; PRAGMA foreign_keys=ON;", pageSize));
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  database.exec(schemaSql());
  database.exec(fmt::format("PRAGMA application_id={}; PRAGMA user_version={};", applicationId,
                            MachineFile::formatVersion));
  writeHistory(database, history);
  for (const auto& [hash, blob] : blobs) {
    writeBlob(database, hash, blob.name, blob.bytes);
  }
  transaction.commit();
}

/// What is known before the file is opened as a database. Takes the lock when the file is to be written.
ReadOnlyReason whyReadOnly(const std::string& path, bool asked, int version, FileLock& lock) {
  if (version > MachineFile::formatVersion) {
    return ReadOnlyReason::newerProgram;
  }
  if (asked) {
    return ReadOnlyReason::asked;
  }
  if (!mayWrite(path)) {
    return ReadOnlyReason::noPermission;
  }
  switch (lock.take(path)) {
    case FileLock::Outcome::heldByOther:
      return ReadOnlyReason::otherProgram;
    case FileLock::Outcome::notPossible:
      return ReadOnlyReason::noPermission;
    case FileLock::Outcome::taken:
      break;
  }
  return ReadOnlyReason::none;
}

/// An older file that is not to be written, brought up to date in memory.
SQLite::Database migratedInMemory(SQLite::Database& original, int version,
                                  const std::vector<Migration>& steps) {
  SQLite::Database copy(":memory:", SQLite::OPEN_READWRITE);
  copyDatabase(original, copy);
  migrate(copy, version, MachineFile::formatVersion, steps);
  return copy;
}

}  // namespace

tl::expected<std::unique_ptr<MachineFile>, std::string> MachineFile::create(const std::string& path,
                                                                            const History& history,
                                                                            const Blobs& blobs) {
  std::error_code ignored;
  if (std::filesystem::exists(path, ignored)) {
    return tl::unexpected(say(Text::tr("{0} is already there; choose a name that is free."), path));
  }
  const auto failed = [&](const std::string& why) {
    return tl::unexpected(say(Text::tr("{0} cannot be made: {1}."), path, why));
  };
  const std::string unfinished = path + ".unfinished";
  removeDatabase(unfinished);  // left behind by a killed program
  try {
    writeNew(unfinished, history, blobs);
  } catch (const SQLite::Exception& problem) {
    removeDatabase(unfinished);
    return failed(inWords(problem));
  }
  if (const auto moved = moveInto(unfinished, path); !moved) {
    return failed(moved.error());
  }
  return open(path);
}

tl::expected<std::unique_ptr<MachineFile>, std::string> MachineFile::open(
    const std::string& given, bool readOnly, const std::vector<Migration>& steps) {
  std::error_code problem;
  const auto real = std::filesystem::canonical(given, problem);  // one lock for all names of a file
  const std::string path = problem ? given : real.string();
  const auto version = formatVersionOf(path);
  if (!version) {
    return tl::unexpected(version.error());
  }
  try {
    auto parts = std::make_unique<MachineFileParts>(path, connectForReading(path));
    parts->readOnly = whyReadOnly(path, readOnly, *version, parts->lock);
    if (findingsOf(parts->database, Check::quick) != "ok") {
      parts->readOnly = ReadOnlyReason::damaged;
    } else if (*version < formatVersion && parts->readOnly == ReadOnlyReason::none) {
      if (auto moved = migrateFile(path, *version, formatVersion, steps); !moved) {
        return tl::unexpected(moved.error());
      }
    } else if (*version < formatVersion) {
      parts->database = migratedInMemory(parts->database, *version, steps);
    }
    if (parts->readOnly == ReadOnlyReason::none) {
      parts->database = connectForWriting(path);
      addWhatIsLacking(parts->database);
      parts->dataVersion = parts->currentDataVersion();
      parts->identity = identityOf(path);
    }
    const SQLite::Transaction moment(parts->database);
    parts->history = readHistory(parts->database, parts->losses);
    if (!parts->losses.empty() && parts->readOnly != ReadOnlyReason::newerProgram) {
      parts->readOnly = ReadOnlyReason::damaged;
    }
    return std::unique_ptr<MachineFile>(new MachineFile(std::move(parts)));
  } catch (const SQLite::Exception& failed) {
    return tl::unexpected(
        isBusy(failed) ? say(Text::tr("{0} is being written by another program; try again later."), path)
                       : say(Text::tr("{0} cannot be opened: {1}."), path, inWords(failed)));
  }
}

}  // namespace fettle
