#pragma once
#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "core/history/change.h"
#include "core/history/history.h"
#include "core/store/schema.h"

namespace fettle {

/// Why an opened file cannot be written.
enum class ReadOnlyReason { none, asked, otherProgram, newerProgram, damaged, noPermission };

/// One machine's history in one SQLite file, and its only owner in memory. Every function that writes
/// returns when the bytes are on disk, or with one sentence why they are not; memory follows the disk.
class MachineFile {
 public:
  using Error = std::string;

  static constexpr int formatVersion = 1;

  /// Makes a new file; refuses to overwrite one.
  static tl::expected<std::unique_ptr<MachineFile>, Error> create(const std::string& path,
                                                                  const History& history = {});
  /// Opens a file. Older formats are brought up to date on a copy first (see migration.h); files that are
  /// in use elsewhere, newer than this program, damaged, or not writable open read only and say why. What
  /// is no machine file is refused and left alone. A test may hand in other migrations.
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

  /// One change, one transaction. Refused when another program wrote to the file in the meantime.
  tl::expected<void, Error> apply(const Change& change);

  /// Keeps the result of a run in memory until keep() writes it; results are derived and may wait.
  void hold(RecordId run, Evaluated evaluated);
  /// Writes all held results in one transaction.
  tl::expected<void, Error> keep();

  /// Content-addressed: the same bytes are kept once. Returns their SHA-256.
  tl::expected<std::string, Error> addBlob(const std::string& bytes, const std::string& name);
  tl::expected<std::string, Error> blob(const std::string& sha256) const;

  /// A whole copy at another place, made by SQLite's online backup; refuses to overwrite.
  tl::expected<void, Error> saveCopy(const std::string& path) const;

  /// SQLite's full integrity check: "ok", or what it found.
  std::string integrity() const;

 private:
  struct Parts;
  explicit MachineFile(std::unique_ptr<Parts> parts);
  template <typename Work>
  tl::expected<void, Error> transact(const Work& work);
  std::unique_ptr<Parts> m_parts;
};

}  // namespace fettle
