#pragma once
#include <cstdint>
#include <string>
#include <tl/expected.hpp>

namespace fettle {

// What a machine file is as a file of the system, seen without opening it as a database.

/// The format version of the machine file at a path, read from its first 100 bytes ("Database File
/// Format", sqlite.org, 1.3: header string, user version, application id). The error is one sentence: not
/// there, not readable, no machine file.
tl::expected<int, std::string> formatVersionOf(const std::string& path);

/// Whether the system lets this program write the file. Of its folder the lock file tells.
bool mayWrite(const std::string& path);

/// Which file stands at a path; another one put in its place, by a program that synchronises folders, has
/// another identity. All zeros when there is none.
struct FileIdentity {
  std::uint64_t device = 0;
  std::uint64_t number = 0;
  friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};
FileIdentity identityOf(const std::string& path);
FileIdentity identityOf(int descriptor);

/// Gives a finished file its name, in place of whatever has it, and waits until the folder is on disk. The
/// finished file is removed when that fails; the error is the system's words.
tl::expected<void, std::string> moveInto(const std::string& finished, const std::string& path);

/// Removes a file and what SQLite may have left beside it.
void removeDatabase(const std::string& path);

}  // namespace fettle
