#pragma once
#include <SQLiteCpp/Database.h>

#include <string>
#include <tl/expected.hpp>

namespace fettle {

// Connections, checks and copies of SQLite files. All throw SQLite::Exception where not said otherwise.

/// Opens an existing file. For reading: nothing is written, except that what a killed program left half
/// written is taken back, as every reader of SQLite does, where the system allows it.
SQLite::Database connectForReading(const std::string& path);
/// For writing: foreign keys on, a commit is on disk when it returns.
SQLite::Database connectForWriting(const std::string& path);

/// Whether a failure only says that another program is in the middle of a write.
bool isBusy(const SQLite::Exception& problem);

/// Whether a failure says that the content of the file is not what SQLite wrote.
bool isDamage(const SQLite::Exception& problem);

/// What went wrong, in words that end a sentence.
std::string inWords(const SQLite::Exception& problem);

enum class Check { quick, full };
/// What the length of a file and SQLite's check of it tell; "ok" when sound. A damage that ends the check
/// is a finding too.
std::string findingsOf(SQLite::Database& database, Check check);

/// Copies a whole database over another by SQLite's online backup.
void copyDatabase(SQLite::Database& source, SQLite::Database& target);

/// The same into a new file, which has its name only when it is whole; refuses to overwrite. Does not
/// throw: the error is words that end a sentence.
tl::expected<void, std::string> saveDatabase(SQLite::Database& source, const std::string& path);

}  // namespace fettle
