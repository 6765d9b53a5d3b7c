#include "core/store/machine_file.h"

#include <SQLiteCpp/Transaction.h>

#include <algorithm>

#include "core/history/evaluation.h"
#include "core/measure/text.h"
#include "core/store/history_reading.h"
#include "core/store/machine_file_parts.h"
#include "core/store/record_rows.h"

namespace fettle {
namespace {

/// Whether the record a change begins with is gone afterwards.
bool removesRecord(const Change& change) {
  const bool keeps = change.before && change.after && change.before->index() == change.after->index() &&
                     idOf(*change.before) == idOf(*change.after);
  return change.before && !keeps;
}

void carryOut(const Change& change, SQLite::Database& database) {
  if (removesRecord(change)) {
    removeRecord(database, *change.before);
  }
  if (change.after) {
    writeRecord(database, *change.after);
  }
}

bool sameRecords(const History& first, const History& second) {
  return first.machine == second.machine && first.changes == second.changes &&
         first.sessions == second.sessions && first.runs == second.runs && first.marks == second.marks;
}

}  // namespace

MachineFile::MachineFile(std::unique_ptr<MachineFileParts> parts) : m_parts(std::move(parts)) {}

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

/// Inside a transaction: whether the file still holds what memory holds. A change that failed but got to
/// the disk after all is taken back first.
bool MachineFile::agreesWithDisk() {
  MachineFileParts& parts = *m_parts;
  const std::int64_t version = parts.currentDataVersion();
  if (version == parts.dataVersion && parts.doubtful.empty()) {
    return true;
  }
  // SQLite counts its own failed writes like those of others: only the content tells.
  std::vector<std::string> losses;
  const History found = readHistory(parts.database, losses);
  if (sameRecords(found, parts.history)) {
    parts.doubtful.clear();
  } else {
    const auto onDisk =
        std::find_if(parts.doubtful.begin(), parts.doubtful.end(), [&](const Change& change) {
          History expected = parts.history;
          fettle::apply(change, expected);
          return sameRecords(found, expected);
        });
    if (onDisk == parts.doubtful.end()) {
      return false;
    }
    const Change change = *onDisk;
    parts.doubtful = {change};
    carryOut(change.reversed(), parts.database);
    if (removesRecord(change) && parts.history.evaluated.count(idOf(*change.before)) > 0) {
      parts.held.insert(idOf(*change.before));  // its result went with it
    }
  }
  parts.dataVersion = version;
  return true;
}

template <typename Work>
tl::expected<void, std::string> MachineFile::transact(const Work& work) {
  if (m_parts->readOnly != ReadOnlyReason::none) {
    return tl::unexpected(readOnlySentence());
  }
  const auto refused = [&](const std::string& sentence) {
    return tl::unexpected(say(sentence, m_parts->path));
  };
  try {
    if (identityOf(m_parts->path) != m_parts->identity) {
      return refused(Text::tr("{0} was removed or replaced by another program: save a copy to go on."));
    }
    SQLite::Transaction transaction(m_parts->database, SQLite::TransactionBehavior::IMMEDIATE);
    if (!agreesWithDisk()) {
      return refused(Text::tr("{0} was changed by another program: open it again to go on."));
    }
    work(m_parts->database);
    transaction.commit();
    m_parts->doubtful.clear();
    return {};
  } catch (const SQLite::Exception& problem) {
    if (isBusy(problem)) {
      return refused(
          Text::tr("{0} is being written by another program, the last entry was not taken: try again."));
    }
    return tl::unexpected(say(Text::tr("{0} could not be written, the last entry was not taken: {1}."),
                              m_parts->path, inWords(problem)));
  }
}

tl::expected<void, std::string> MachineFile::apply(const Change& change) {
  const auto done = transact([&](SQLite::Database& database) { carryOut(change, database); });
  MachineFileParts& parts = *m_parts;
  if (!done) {
    parts.doubtful.push_back(change);
    return done;
  }
  fettle::apply(change, parts.history);
  if (removesRecord(change) && std::holds_alternative<StepRun>(*change.before)) {
    parts.history.evaluated.erase(idOf(*change.before));
    parts.held.erase(idOf(*change.before));
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
  std::string hash = sha256(bytes);
  const auto done = transact([&](SQLite::Database& database) { writeBlob(database, hash, name, bytes); });
  if (!done) {
    return tl::unexpected(done.error());
  }
  return hash;
}

tl::expected<std::string, std::string> MachineFile::blob(const std::string& hash) const {
  FoundBlob found = readBlob(m_parts->database, hash);
  const auto failed = [&](const std::string& sentence) {
    return tl::unexpected(say(sentence, found.blob.name, m_parts->path));
  };
  switch (found.state) {
    case BlobState::sound:
      break;
    case BlobState::damaged:
      return failed(Text::tr("The file {0} in {1} is damaged."));
    case BlobState::missing:
      return failed(Text::tr("The file {0} is not in {1}."));
    case BlobState::unread:
      return failed(Text::tr("The file {0} in {1} cannot be read now; try again later."));
  }
  return std::move(found.blob.bytes);
}

tl::expected<void, std::string> MachineFile::saveCopy(const std::string& to) const {
  return saveDatabase(m_parts->database, to).map_error([&](const std::string& why) {
    return say(Text::tr("The copy {0} cannot be made: {1}."), to, why);
  });
}

std::string MachineFile::integrity() const {
  try {
    return findingsOf(m_parts->database, Check::full);
  } catch (const SQLite::Exception& problem) {
    return problem.what();
  }
}

}  // namespace fettle
