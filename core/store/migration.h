#pragma once
#include <SQLiteCpp/Database.h>

#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/store/migrations.h"

namespace fettle {

/// Brings an open database from one format version to a later one, in one transaction. Throws
/// SQLite::Exception.
void migrate(SQLite::Database& database, int from, int to, const std::vector<Migration>& steps);

/// Brings a file to a later format so that nothing can be lost: a copy beside it is migrated and its
/// integrity checked, the file is kept as "<file>.before-version-<to>" (never in place of an older one),
/// then the migrated copy takes the file's name in one move. On failure the file is as it was. Nobody may
/// have the file open. The error is one sentence.
tl::expected<void, std::string> migrateFile(const std::string& path, int from, int to,
                                            const std::vector<Migration>& steps);

}  // namespace fettle
