#include "core/store/migration.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "core/measure/text.h"

namespace fettle {
namespace {

void runMigrations(const std::string& path, int from, int target, const std::vector<Migration>& steps) {
  SQLite::Database database(path, SQLite::OPEN_READWRITE);
  database.exec("PRAGMA synchronous=FULL");
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  for (int version = from; version < target; ++version) {
    const auto step =
        std::find_if(steps.begin(), steps.end(), [&](const Migration& one) { return one.from == version; });
    if (step == steps.end()) {
      throw SQLite::Exception(fmt::format("there is no way from format {} on", version));
    }
    database.exec(step->sql);
  }
  database.exec(fmt::format("PRAGMA user_version={}", target));
  transaction.commit();
  const std::string sound = database.execAndGet("PRAGMA integrity_check").getString();
  if (sound != "ok") {
    throw SQLite::Exception(sound);
  }
}

}  // namespace

tl::expected<void, std::string> copyDatabase(const std::string& from, const std::string& to) {
  if (std::filesystem::exists(to)) {
    return tl::unexpected(say(Text::tr("{0} is already there; choose a name that is free."), to));
  }
  try {
    SQLite::Database source(from, SQLite::OPEN_READONLY, 5000);
    SQLite::Database copy(to, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup backup(copy, source);
    backup.executeStep(-1);
    return {};
  } catch (const SQLite::Exception& problem) {
    std::error_code ignored;
    std::filesystem::remove(to, ignored);
    return tl::unexpected(say(Text::tr("{0} cannot be written: {1}."), to, problem.what()));
  }
}

tl::expected<void, std::string> migrateFile(const std::string& path, int from, int target,
                                            const std::vector<Migration>& steps) {
  const std::string kept = fmt::format("{}.version-{}", path, from);
  const std::string work = path + ".migrating";
  std::error_code problem;
  std::filesystem::remove(work, problem);
  if (!std::filesystem::exists(kept)) {
    if (auto copied = copyDatabase(path, kept); !copied) {
      return copied;
    }
  }
  if (auto copied = copyDatabase(path, work); !copied) {
    return copied;
  }
  try {
    runMigrations(work, from, target, steps);
  } catch (const SQLite::Exception& failed) {
    std::filesystem::remove(work, problem);
    return tl::unexpected(
        say(Text::tr("{0} is of format {1} and cannot be brought to format {2}: {3}. It is unchanged."),
            path, from, target, failed.what()));
  }
  std::filesystem::rename(work, path, problem);
  if (problem) {
    return tl::unexpected(
        say(Text::tr("{0} cannot be replaced: {1}. It is unchanged."), path, problem.message()));
  }
  return {};
}

}  // namespace fettle
