#include "core/store/machine_file.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <filesystem>
#include <set>

#include "core/history/evaluation.h"
#include "core/measure/text.h"
#include "core/store/file_lock.h"
#include "core/store/migration.h"
#include "core/store/record_rows.h"
#include "core/store/sql_values.h"

namespace fettle {

struct MachineFile::Parts {
  Parts(std::string place, int flags) : path(std::move(place)), database(path, flags, busyMilliseconds) {}

  static constexpr int busyMilliseconds = 3000;
  std::string path;
  FileLock lock;
  mutable SQLite::Database database;
  History history;
  std::vector<std::string> losses;
  std::set<RecordId> held;
  ReadOnlyReason readOnly = ReadOnlyReason::none;
  std::int64_t dataVersion = 0;  ///< SQLite's count of other connections' writes

  std::int64_t currentDataVersion() const { return database.execAndGet("PRAGMA data_version").getInt64(); }
};

namespace {

/// Rollback journal and full synchronous: files live on shared and synced folders, where a write-ahead log
/// is not safe. The journal is kept and overwritten, which saves two writes of the folder a commit.
constexpr const char* writingPragmas =
    "PRAGMA journal_mode=PERSIST; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;";

std::string whatIsWrong(const std::string& path, const SQLite::Exception& problem) {
  return say(
      Text::tr(
          "{0} could not be written: {1}. The last entry was not taken; everything before it is safe."),
      path, problem.what());
}

/// One table family into `target`; what cannot be read becomes a loss.
template <typename Target, typename Read>
void readPart(SQLite::Database& database, Target& target, const Read& read, const std::string& name,
              std::vector<std::string>& losses) {
  try {
    target = read(database);
  } catch (const std::exception& problem) {
    losses.push_back(say(Text::tr("{0} could not be read: {1}."), name, problem.what()));
  }
}

void readHistory(SQLite::Database& database, History& history, std::vector<std::string>& losses) {
  readPart(database, history.machine, readMachine, Text::tr("The machine sheet"), losses);
  readPart(database, history.changes, readPartChanges, Text::tr("The part changes"), losses);
  readPart(database, history.sessions, readSessions, Text::tr("The sessions"), losses);
  readPart(database, history.runs, readRuns, Text::tr("The step records"), losses);
  readPart(database, history.marks, readMarks, Text::tr("The marks"), losses);
  readPart(database, history.evaluated, readEvaluated, Text::tr("The results"), losses);
}

struct FileKind {
  std::int64_t application = 0;
  int version = 0;
};

tl::expected<FileKind, std::string> kindOf(const std::string& path) {
  if (!std::filesystem::is_regular_file(path)) {
    return tl::unexpected(say(Text::tr("{0} is not there, or is not a file."), path));
  }
  const auto refused = [&] {
    return tl::unexpected(
        say(Text::tr("{0} is not a machine file of Fettle; it was left as it is."), path));
  };
  try {
    SQLite::Database database(path, SQLite::OPEN_READONLY, 3000);
    FileKind kind;
    kind.application = database.execAndGet("PRAGMA application_id").getInt64();
    kind.version = database.execAndGet("PRAGMA user_version").getInt();
    if (kind.application != applicationId) {
      return refused();
    }
    return kind;
  } catch (const SQLite::Exception&) {
    return refused();
  }
}

bool writable(const std::string& path) {
  const auto may = std::filesystem::status(path).permissions() & std::filesystem::perms::owner_write;
  return may != std::filesystem::perms::none;
}

}  // namespace

MachineFile::MachineFile(std::unique_ptr<Parts> parts) : m_parts(std::move(parts)) {}

MachineFile::~MachineFile() = default;

tl::expected<std::unique_ptr<MachineFile>, std::string> MachineFile::create(const std::string& path,
                                                                            const History& history) {
  if (std::filesystem::exists(path)) {
    return tl::unexpected(say(Text::tr("{0} is already there; choose a name that is free."), path));
  }
  try {
    auto parts = std::make_unique<Parts>(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Database& database = parts->database;
    database.exec(writingPragmas);
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    database.exec(schemaSql());
    database.exec(
        fmt::format("PRAGMA application_id={}; PRAGMA user_version={};", applicationId, formatVersion));
    writeRecord(database, history.machine);
    const auto writeAll = [&](const auto& records) {
      for (const auto& record : records) {
        writeRecord(database, record);
      }
    };
    writeAll(history.changes);
    writeAll(history.sessions);
    writeAll(history.runs);
    writeAll(history.marks);
    for (const auto& [run, evaluated] : history.evaluated) {
      writeEvaluated(database, run, evaluated);
    }
    transaction.commit();
    parts->lock.take(path);
    parts->history = history;
    parts->dataVersion = parts->currentDataVersion();
    return std::unique_ptr<MachineFile>(new MachineFile(std::move(parts)));
  } catch (const SQLite::Exception& problem) {
    std::error_code ignored;
    std::filesystem::remove(path, ignored);
    return tl::unexpected(say(Text::tr("{0} cannot be made: {1}."), path, problem.what()));
  }
}

tl::expected<std::unique_ptr<MachineFile>, std::string> MachineFile::open(
    const std::string& path, bool readOnly, const std::vector<Migration>& steps) {
  const auto kind = kindOf(path);
  if (!kind) {
    return tl::unexpected(kind.error());
  }
  FileLock lock;
  ReadOnlyReason reason = readOnly ? ReadOnlyReason::asked : ReadOnlyReason::none;
  if (kind->version > formatVersion) {
    reason = ReadOnlyReason::newerProgram;
  }
  auto parts = std::unique_ptr<Parts>();
  try {
    if (reason == ReadOnlyReason::none && !writable(path)) {
      reason = ReadOnlyReason::noPermission;
    }
    parts = std::make_unique<Parts>(path, SQLite::OPEN_READONLY);
    if (reason == ReadOnlyReason::none) {
      const auto outcome = parts->lock.take(path);
      reason = outcome == FileLock::Outcome::taken         ? ReadOnlyReason::none
               : outcome == FileLock::Outcome::heldByOther ? ReadOnlyReason::otherProgram
                                                           : ReadOnlyReason::noPermission;
    }
    if (parts->database.execAndGet("PRAGMA quick_check").getString() != "ok") {
      reason = ReadOnlyReason::damaged;
    }
    if (reason == ReadOnlyReason::none) {
      if (kind->version < formatVersion) {
        if (auto moved = migrateFile(path, kind->version, formatVersion, steps); !moved) {
          return tl::unexpected(moved.error());
        }
      }
      parts->database = SQLite::Database(path, SQLite::OPEN_READWRITE, Parts::busyMilliseconds);
      parts->database.exec(writingPragmas);
    }
  } catch (const SQLite::Exception&) {
    if (!parts) {
      return tl::unexpected(say(Text::tr("{0} cannot be opened."), path));
    }
    reason = ReadOnlyReason::damaged;
  }
  parts->readOnly = reason;
  readHistory(parts->database, parts->history, parts->losses);
  if (!parts->losses.empty() && reason != ReadOnlyReason::newerProgram) {
    parts->readOnly = ReadOnlyReason::damaged;
  }
  if (parts->readOnly == ReadOnlyReason::none) {
    parts->dataVersion = parts->currentDataVersion();
  }
  return std::unique_ptr<MachineFile>(new MachineFile(std::move(parts)));
}

const History& MachineFile::history() const {
  return m_parts->history;
}

const std::vector<std::string>& MachineFile::losses() const {
  return m_parts->losses;
}

const std::string& MachineFile::path() const {
  return m_parts->path;
}

ReadOnlyReason MachineFile::readOnly() const {
  return m_parts->readOnly;
}

std::string MachineFile::readOnlySentence() const {
  switch (m_parts->readOnly) {
    case ReadOnlyReason::none:
      return {};
    case ReadOnlyReason::asked:
      return Text::tr("The file was opened for reading only.");
    case ReadOnlyReason::otherProgram:
      return Text::tr("Another window has this machine open; here it can only be read.");
    case ReadOnlyReason::newerProgram:
      return Text::tr(
          "This file was written by a newer Fettle; it can be read here as far as it is understood, not "
          "changed.");
    case ReadOnlyReason::damaged:
      return Text::tr(
          "This file is damaged. It is not written to; what can be read is shown and can be exported. "
          "Go back to a copy.");
    case ReadOnlyReason::noPermission:
      return Text::tr("There is no permission to write this file or its folder; it can only be read.");
  }
  return {};
}

template <typename Work>
tl::expected<void, std::string> MachineFile::transact(const Work& work) {
  if (m_parts->readOnly != ReadOnlyReason::none) {
    return tl::unexpected(readOnlySentence());
  }
  try {
    SQLite::Transaction transaction(m_parts->database, SQLite::TransactionBehavior::IMMEDIATE);
    if (m_parts->currentDataVersion() != m_parts->dataVersion) {
      return tl::unexpected(
          say(Text::tr("{0} was changed by another program; open it again to go on."), m_parts->path));
    }
    work(m_parts->database);
    transaction.commit();
    return {};
  } catch (const SQLite::Exception& problem) {
    return tl::unexpected(whatIsWrong(m_parts->path, problem));
  }
}

tl::expected<void, std::string> MachineFile::apply(const Change& change) {
  const auto done = transact([&](SQLite::Database& database) {
    if (change.after) {
      writeRecord(database, *change.after);
    } else if (change.before) {
      removeRecord(database, *change.before);
    }
  });
  if (done) {
    fettle::apply(change, m_parts->history);
    if (change.before && !change.after) {
      m_parts->history.evaluated.erase(idOf(*change.before));
    }
  }
  return done;
}

void MachineFile::hold(RecordId run, Evaluated evaluated) {
  m_parts->history.evaluated[run] = std::move(evaluated);
  m_parts->held.insert(run);
}

tl::expected<void, std::string> MachineFile::keep() {
  if (m_parts->held.empty()) {
    return {};
  }
  const auto done = transact([&](SQLite::Database& database) {
    for (const RecordId run : m_parts->held) {
      const auto found = m_parts->history.evaluated.find(run);
      if (found != m_parts->history.evaluated.end() && m_parts->history.run(run)) {
        writeEvaluated(database, run, found->second);
      }
    }
  });
  if (done) {
    m_parts->held.clear();
  }
  return done;
}

tl::expected<std::string, std::string> MachineFile::addBlob(const std::string& bytes,
                                                            const std::string& name) {
  const std::string hash = sha256(bytes);
  const auto done = transact([&](SQLite::Database& database) {
    SQLite::Statement row(database, "INSERT OR IGNORE INTO blobs VALUES(?,?,?,?)");
    row.bind(1, hash);
    row.bind(2, name);
    row.bind(3, static_cast<std::int64_t>(bytes.size()));
    row.bindNoCopy(4, bytes.data(), static_cast<int>(bytes.size()));
    row.exec();
  });
  return done ? tl::expected<std::string, std::string>(hash) : tl::unexpected(done.error());
}

tl::expected<std::string, std::string> MachineFile::blob(const std::string& hash) const {
  try {
    SQLite::Statement row(m_parts->database, "SELECT bytes FROM blobs WHERE sha256=?");
    row.bind(1, hash);
    if (row.executeStep()) {
      std::string bytes = row.getColumn(0).getString();
      if (sha256(bytes) == hash) {
        return bytes;
      }
      return tl::unexpected(
          say(Text::tr("The content {0} in {1} is damaged."), hash.substr(0, 12), m_parts->path));
    }
  } catch (const SQLite::Exception&) {
    return tl::unexpected(
        say(Text::tr("The content {0} in {1} cannot be read."), hash.substr(0, 12), m_parts->path));
  }
  return tl::unexpected(say(Text::tr("The content {0} is not in {1}."), hash.substr(0, 12), m_parts->path));
}

tl::expected<void, std::string> MachineFile::saveCopy(const std::string& to) const {
  return copyDatabase(m_parts->path, to);
}

std::string MachineFile::integrity() const {
  try {
    return m_parts->database.execAndGet("PRAGMA integrity_check").getString();
  } catch (const SQLite::Exception& problem) {
    return problem.what();
  }
}

}  // namespace fettle
