#pragma once
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/store/schema.h"

namespace fettle {

/// Brings a file of an older format to `target`, in three moves so that nothing can be lost: the file is
/// copied beside itself ("<file>.version-<n>", by SQLite's online backup, never over an older copy), the
/// migrations run on a second copy in one transaction and its integrity is checked, then that copy takes
/// the file's place in one rename. On failure the file is as it was. The error is one sentence.
tl::expected<void, std::string> migrateFile(const std::string& path, int from, int target,
                                            const std::vector<Migration>& steps);

/// A copy by SQLite's online backup; refuses to overwrite. The error is one sentence.
tl::expected<void, std::string> copyDatabase(const std::string& from, const std::string& to);

}  // namespace fettle
