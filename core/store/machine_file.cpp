#include "core/store/machine_file.h"

#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>

#include "core/history/evaluation.h"
#include "core/measure/text.h"
#include "core/store/machine_file_parts.h"
#include "core/store/record_rows.h"

namespace fettle {
namespace {

/// SQLite's own limit of a blob (SQLITE_MAX_LENGTH).
constexpr std::size_t largestBlob = 1'000'000'000;

/// Whether a change leaves a record with the identity of `before` behind.
bool keepsRecord(const Change& change) {
  return change.after && change.after->index() == change.before->index() &&
         idOf(*change.after) == idOf(*change.before);
}

}  // namespace

MachineFile::MachineFile(std::unique_ptr<Parts> parts) : m_parts(std::move(parts)) {}

MachineFile::~MachineFile() {
  if (m_parts->readOnly == ReadOnlyReason::none) {
    m_parts->database.tryExec("PRAGMA journal_mode=DELETE");  // leaves no journal beside the file
  }
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
      break;
    case ReadOnlyReason::asked:
      return Text::tr("The file was opened for reading only.");
    case ReadOnlyReason::otherProgram:
      return Text::tr("This machine is open in another window, here it can only be read.");
    case ReadOnlyReason::newerProgram:
      return Text::tr(
          "This file was written by a newer version of the program: what is understood of it can be read, "
          "nothing can be changed.");
    case ReadOnlyReason::damaged:
      return Text::tr(
          "This file is damaged: it is left as it is, what can be read is shown and can be exported.");
    case ReadOnlyReason::noPermission:
      return Text::tr("There is no permission to write this file or its folder, it can only be read.");
  }
  return {};
}

void MachineFile::rereadDataVersion() {
  try {
    m_parts->dataVersion = m_parts->currentDataVersion();
  } catch (const SQLite::Exception&) {
    // the disk still fails; the next write finds out
  }
}

template <typename Work>
tl::expected<void, std::string> MachineFile::transact(const Work& work) {
  if (m_parts->readOnly != ReadOnlyReason::none) {
    return tl::unexpected(readOnlySentence());
  }
  const auto refused = [&](const std::string& sentence) {
    return tl::unexpected(say(sentence, m_parts->path));
  };
  bool unchanged = false;
  try {
    if (identityOf(m_parts->path) != m_parts->identity) {
      return refused(Text::tr("{0} was removed or replaced by another program: save a copy to go on."));
    }
    SQLite::Transaction transaction(m_parts->database, SQLite::TransactionBehavior::IMMEDIATE);
    if (m_parts->currentDataVersion() != m_parts->dataVersion) {
      return refused(Text::tr("{0} was changed by another program: open it again to go on."));
    }
    unchanged = true;
    work(m_parts->database);
    transaction.commit();
    return {};
  } catch (const SQLite::Exception& problem) {
    if (unchanged) {
      // A failed write makes SQLite read the file anew and count that like a foreign change; it was none.
      rereadDataVersion();
    }
    if (isBusy(problem)) {
      return refused(
          Text::tr("{0} is being written by another program, the last entry was not taken: try again."));
    }
    return tl::unexpected(say(Text::tr("{0} could not be written, the last entry was not taken: {1}."),
                              m_parts->path, problem.what()));
  }
}

tl::expected<void, std::string> MachineFile::apply(const Change& change) {
  const bool removes = change.before && !keepsRecord(change);
  const auto done = transact([&](SQLite::Database& database) {
    if (removes) {
      removeRecord(database, *change.before);
    }
    if (change.after) {
      writeRecord(database, *change.after);
    }
  });
  if (done) {
    fettle::apply(change, m_parts->history);
    if (removes && std::holds_alternative<StepRun>(*change.before)) {
      m_parts->history.evaluated.erase(idOf(*change.before));
      m_parts->held.erase(idOf(*change.before));
    }
  }
  return done;
}

void MachineFile::hold(RecordId run, Evaluated evaluated) {
  if (m_parts->history.run(run)) {
    m_parts->history.evaluated[run] = std::move(evaluated);
    m_parts->held.insert(run);
  }
}

tl::expected<void, std::string> MachineFile::keep() {
  if (m_parts->held.empty()) {
    return {};
  }
  const auto done = transact([&](SQLite::Database& database) {
    for (const RecordId run : m_parts->held) {
      writeEvaluated(database, run, m_parts->history.evaluated.at(run));
    }
  });
  if (done) {
    m_parts->held.clear();
  }
  return done;
}

tl::expected<std::string, std::string> MachineFile::addBlob(const std::string& bytes,
                                                            const std::string& name) {
  if (bytes.size() > largestBlob) {
    return tl::unexpected(say(Text::tr("{0} is larger than 1 GB and cannot be kept."), name));
  }
  std::string hash = sha256(bytes);
  const auto done = transact([&](SQLite::Database& database) {
    SQLite::Statement row(database, "INSERT OR IGNORE INTO blobs VALUES(?,?,?,?)");
    row.bind(1, hash);
    row.bind(2, name);
    row.bind(3, static_cast<std::int64_t>(bytes.size()));
    row.bindNoCopy(4, bytes.data(), static_cast<int>(bytes.size()));
    row.exec();
  });
  if (!done) {
    return tl::unexpected(done.error());
  }
  return hash;
}

tl::expected<std::string, std::string> MachineFile::blob(const std::string& hash) const {
  const auto failed = [&](const std::string& sentence) {
    return tl::unexpected(say(sentence, hash.substr(0, 12), m_parts->path));
  };
  try {
    SQLite::Statement row(m_parts->database, "SELECT bytes FROM blobs WHERE sha256=?");
    row.bind(1, hash);
    if (!row.executeStep()) {
      return failed(Text::tr("The content {0} is not in {1}."));
    }
    std::string bytes = row.getColumn(0).getString();
    if (sha256(bytes) != hash) {
      return failed(Text::tr("The content {0} in {1} is damaged."));
    }
    return bytes;
  } catch (const SQLite::Exception&) {
    return failed(Text::tr("The content {0} in {1} cannot be read."));
  }
}

tl::expected<void, std::string> MachineFile::saveCopy(const std::string& to) const {
  return saveDatabase(m_parts->database, to);
}

std::string MachineFile::integrity() const {
  try {
    return findingsOf(m_parts->database, Check::full);
  } catch (const SQLite::Exception& problem) {
    return problem.what();
  }
}

}  // namespace fettle
