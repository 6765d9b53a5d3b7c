#include "core/store/migration.h"

#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "core/measure/json.h"
#include "core/measure/text.h"
#include "core/store/database.h"
#include "core/store/file_on_disk.h"

namespace fettle {
namespace {

/// The name the old file is kept under: the first that is free.
std::string nameToKeep(const std::string& path, int to) {
  const std::string first = fmt::format("{}.before-version-{}", path, to);
  std::string name = first;
  std::error_code ignored;
  for (int i = 2; std::filesystem::exists(name, ignored); ++i) {
    name = fmt::format("{}-{}", first, i);
  }
  return name;
}

/// What stands in the way; empty when `work` holds the migrated, sound copy.
std::string makeMigrated(SQLite::Database& original, const std::string& work, int from, int to,
                         const std::vector<Migration>& steps) {
  if (const auto copied = saveDatabase(original, work); !copied) {
    return copied.error();
  }
  try {
    SQLite::Database copy(work, SQLite::OPEN_READWRITE);
    migrate(copy, from, to, steps);
    const std::string found = findingsOf(copy, Check::full);
    return found == "ok" ? std::string() : found;
  } catch (const SQLite::Exception& problem) {
    return inWords(problem);
  }
}

}  // namespace

void migrate(SQLite::Database& database, int from, int to, const std::vector<Migration>& steps) {
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  for (int version = from; version < to; ++version) {
    const auto step =
        std::find_if(steps.begin(), steps.end(), [&](const Migration& one) { return one.from == version; });
    if (step == steps.end()) {
      throw SQLite::Exception(say(Text::tr("there is no way on from format {0}"), version));
    }
    database.exec(step->sql);
    try {
      step->then ? step->then(database) : void();
    } catch (const Json::exception&) {
      throw SQLite::Exception(Text::tr("a record in it makes no sense"));
    }
  }
  database.exec(fmt::format("PRAGMA user_version={}", to));
  transaction.commit();
}

tl::expected<void, std::string> migrateFile(const std::string& path, int from, int to,
                                            const std::vector<Migration>& steps) {
  const std::string work = path + ".migrating";
  const std::string kept = nameToKeep(path, to);
  const auto failed = [&](const std::string& why) {
    removeDatabase(work);
    return tl::unexpected(
        say(Text::tr("{0} is of format {1} and could not be brought to format {2}, it is unchanged: {3}."),
            path, from, to, why));
  };
  removeDatabase(work);  // left behind by a killed program
  try {
    SQLite::Database original = connectForReading(path);
    if (const auto why = makeMigrated(original, work, from, to, steps); !why.empty()) {
      return failed(why);
    }
    if (const auto copied = saveDatabase(original, kept); !copied) {
      return failed(copied.error());
    }
  } catch (const SQLite::Exception& problem) {
    return failed(inWords(problem));
  }
  std::error_code ignored;
  std::filesystem::permissions(work, std::filesystem::status(path, ignored).permissions(), ignored);
  if (const auto moved = moveInto(work, path); !moved) {
    removeDatabase(kept);
    return failed(moved.error());
  }
  return {};
}

}  // namespace fettle
