#include "core/store/database.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

#include <filesystem>

#include "core/measure/text.h"
#include "core/store/file_on_disk.h"

namespace fettle {
namespace {

constexpr int busyMilliseconds = 3000;

/// A file from elsewhere may be made to mislead: its schema is not trusted, its cells are checked.
constexpr const char* carefulPragmas = "PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON;";

/// Rollback journal and full synchronous: files live on shared and synchronised folders, where a
/// write-ahead log is not safe. The journal is kept and overwritten, which takes the least writes of the
/// folder a commit, and none after which the commit could still be lost (sqlite.org, PRAGMA synchronous).
constexpr const char* writingPragmas =
    "PRAGMA journal_mode=PERSIST; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;";

/// Whether a file is shorter than its pages, of which SQLite takes the end of the last one for zeros.
/// Inside a transaction, so that nobody is writing. Asks for the size by name: opening the file beside
/// SQLite and closing it would let go of SQLite's locks ("How To Corrupt An SQLite Database File",
/// sqlite.org, 2.2).
bool endsEarly(SQLite::Database& database) {
  const auto pages = database.execAndGet("PRAGMA page_count").getInt64();
  const auto pageSize = database.execAndGet("PRAGMA page_size").getInt64();
  std::error_code inMemory;
  const auto size = std::filesystem::file_size(database.getFilename(), inMemory);
  return !inMemory && size < static_cast<std::uintmax_t>(pages * pageSize);
}

}  // namespace

SQLite::Database connectForReading(const std::string& path) {
  SQLite::Database database(path, SQLite::OPEN_READONLY, busyMilliseconds);
  database.exec(carefulPragmas);
  try {
    database.execAndGet("SELECT count(*) FROM sqlite_schema");
  } catch (const SQLite::Exception& problem) {
    if (problem.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK) {
      database = SQLite::Database(path, SQLite::OPEN_READWRITE, busyMilliseconds);
      database.exec(carefulPragmas);
      database.exec("PRAGMA query_only=ON");
      database.execAndGet("SELECT count(*) FROM sqlite_schema");
    }
  }
  return database;
}

SQLite::Database connectForWriting(const std::string& path) {
  SQLite::Database database(path, SQLite::OPEN_READWRITE, busyMilliseconds);
  database.exec(carefulPragmas);
  database.exec(writingPragmas);
  return database;
}

bool isBusy(const SQLite::Exception& problem) {
  return (problem.getErrorCode() & 0xff) == SQLITE_BUSY;
}

bool isDamage(const SQLite::Exception& problem) {
  const int kind = problem.getErrorCode() & 0xff;
  return kind == SQLITE_CORRUPT || kind == SQLITE_NOTADB;
}

std::string inWords(const SQLite::Exception& problem) {
  switch (problem.getErrorCode() & 0xff) {
    case SQLITE_FULL:
      return Text::tr("the disk is full");
    case SQLITE_IOERR:
      return Text::tr("the disk reports a failure");
    case SQLITE_CANTOPEN:
    case SQLITE_READONLY:
      return Text::tr("the system does not allow it");
    case SQLITE_CONSTRAINT:
      return Text::tr("it does not fit the records that are there");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return Text::tr("it is damaged");
    case SQLITE_TOOBIG:
      return Text::tr("a file taken in is larger than 1 GB");
    case SQLITE_NOMEM:
      return Text::tr("there is not enough memory");
    default:
      return say(Text::tr("the file store reports failure {0}"), problem.getExtendedErrorCode());
  }
}

std::string findingsOf(SQLite::Database& database, Check check) {
  std::string findings;
  const auto add = [&](const std::string& finding) {
    findings += (findings.empty() ? "" : "; ") + finding;
  };
  try {
    const SQLite::Transaction moment(database);
    if (endsEarly(database)) {
      return Text::tr("the file ends in the middle of a page");
    }
    SQLite::Statement row(database,
                          check == Check::full ? "PRAGMA integrity_check(10)" : "PRAGMA quick_check(1)");
    while (row.executeStep()) {
      add(row.getColumn(0).getString());
    }
    if (check == Check::full) {
      SQLite::Statement orphan(database, "PRAGMA foreign_key_check");
      while (orphan.executeStep()) {
        add(say(Text::tr("a row of {0} belongs to no row of {1}"), orphan.getColumn(0).getString(),
                orphan.getColumn(2).getString()));
      }
    }
  } catch (const SQLite::Exception& problem) {
    if (isBusy(problem)) {
      throw;
    }
    add(inWords(problem));
  }
  return findings;
}

void copyDatabase(SQLite::Database& source, SQLite::Database& target) {
  SQLite::Backup backup(target, source);
  if (const int result = backup.executeStep(-1); result != SQLITE_DONE) {
    throw SQLite::Exception(sqlite3_errstr(result), result);
  }
}

tl::expected<void, std::string> saveDatabase(SQLite::Database& source, const std::string& path) {
  std::error_code ignored;
  if (std::filesystem::exists(path, ignored)) {
    return tl::unexpected(Text::tr("the name is taken"));
  }
  const std::string unfinished = path + ".unfinished";
  removeDatabase(unfinished);  // left behind by a killed program
  try {
    SQLite::Database copy(unfinished, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    copyDatabase(source, copy);
  } catch (const SQLite::Exception& problem) {
    removeDatabase(unfinished);
    return tl::unexpected(inWords(problem));
  }
  return moveInto(unfinished, path);
}

}  // namespace fettle
