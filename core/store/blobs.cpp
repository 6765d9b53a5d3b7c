#include "core/store/blobs.h"

#include <SQLiteCpp/Statement.h>
#include <sqlite3.h>

#include "core/history/evaluation.h"
#include "core/store/database.h"

namespace fettle {
namespace {

/// SQLite's own limit (SQLITE_MAX_LENGTH); it counts the bytes it is given in an int.
constexpr std::size_t largestBlob = 1'000'000'000;

}  // namespace

void writeBlob(SQLite::Database& database, const std::string& hash, const std::string& name,
               const std::string& bytes) {
  if (bytes.size() > largestBlob) {
    throw SQLite::Exception(sqlite3_errstr(SQLITE_TOOBIG), SQLITE_TOOBIG);
  }
  SQLite::Statement row(database, "INSERT OR IGNORE INTO blobs VALUES(?,?,?,?)");
  row.bind(1, hash);
  row.bind(2, name);
  row.bind(3, static_cast<std::int64_t>(bytes.size()));
  row.bindNoCopy(4, bytes.data(), static_cast<int>(bytes.size()));
  row.exec();
}

FoundBlob readBlob(SQLite::Database& database, const std::string& hash) {
  FoundBlob found{BlobState::missing, {hash.substr(0, 12), {}}};
  try {
    SQLite::Statement row(database, "SELECT name,bytes FROM blobs WHERE sha256=?");
    row.bind(1, hash);
    if (!row.executeStep()) {
      return found;
    }
    found.blob.name = row.getColumn(0).getString();
    found.blob.bytes = row.getColumn(1).getString();
  } catch (const SQLite::Exception& problem) {
    found.state = isDamage(problem) ? BlobState::damaged : BlobState::unread;
    return found;
  }
  // After the statement has let go of the file.
  found.state = sha256(found.blob.bytes) == hash ? BlobState::sound : BlobState::damaged;
  return found;
}

}  // namespace fettle
