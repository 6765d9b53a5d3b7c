#pragma once
#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "core/history/change.h"
#include "core/history/history.h"
#include "core/store/blobs.h"
#include "core/store/migrations.h"
#include "core/store/read_only_reason.h"

namespace fettle {

struct MachineFileParts;

/// One machine's history in one SQLite file, and its only owner in memory. Every function that writes
/// returns when the bytes are on disk, or with one sentence why they are not; memory follows the disk. For
/// one thread.
class MachineFile {
 public:
  using Error = std::string;

  static constexpr int formatVersion = 2;

  /// Makes a new file, which has its name only when it is whole, and opens it; refuses to overwrite.
  static tl::expected<std::unique_ptr<MachineFile>, Error> create(const std::string& path,
                                                                  const History& history = {},
                                                                  const Blobs& blobs = {});
  /// Opens a file. Older formats are brought up to date first, on a copy (see migration.h; in memory when
  /// the file is not to be written). Files that are in use elsewhere, newer than this program, damaged, or
  /// not writable open read only and say why. What is no machine file is refused and left alone. A test
  /// may hand in other migrations.
  static tl::expected<std::unique_ptr<MachineFile>, Error> open(
      const std::string& path, bool readOnly = false, const std::vector<Migration>& steps = migrations());
  ~MachineFile();

  /// Everything in the file but the blobs. Of a damaged file: what can be read.
  const History& history() const;
  /// What could not be read of a damaged file, in sentences.
  const std::vector<std::string>& losses() const;
  const std::string& path() const;
  ReadOnlyReason readOnly() const;
  /// One sentence for the user; empty when the file can be written.
  std::string readOnlySentence() const;

  /// One change, one transaction; `change.before` is as history() has it. The result of a removed run goes
  /// with it. Refused when another program wrote to the file in the meantime.
  tl::expected<void, Error> apply(const Change& change);

  /// Keeps the result of a run in memory until keep() writes it; results are derived and may wait. A run
  /// that is no longer there is passed over.
  void hold(RecordId run, Evaluated evaluated);
  /// Writes all held results in one transaction. What fails is tried again by the next call.
  tl::expected<void, Error> keep();

  /// Content-addressed: the same bytes are kept once. Returns their SHA-256.
  tl::expected<std::string, Error> addBlob(const std::string& bytes, const std::string& name);
  /// The bytes, compared with their hash.
  tl::expected<std::string, Error> blob(const std::string& sha256) const;

  /// A whole copy at another place, made by SQLite's online backup; refuses to overwrite.
  tl::expected<void, Error> saveCopy(const std::string& path) const;

  /// SQLite's full integrity check, foreign keys too: "ok", or what it found.
  std::string integrity() const;

 private:
  explicit MachineFile(std::unique_ptr<MachineFileParts> parts);
  template <typename Work>
  tl::expected<void, Error> transact(const Work& work);
  bool agreesWithDisk();
  std::unique_ptr<MachineFileParts> m_parts;
};

}  // namespace fettle
