#pragma once
#include <map>
#include <string>

namespace SQLite {
class Database;
}

namespace fettle {

/// What was taken in of a file that inputs refer to, and the name it came under.
struct Blob {
  std::string name, bytes;
};
using Blobs = std::map<std::string, Blob>;  ///< by SHA-256

/// Writes a blob under its SHA-256; the same bytes are kept once, under their first name. Throws
/// SQLite::Exception.
void writeBlob(SQLite::Database& database, const std::string& hash, const std::string& name,
               const std::string& bytes);

/// `unread`: something kept it from being read, another program as a rule, which says nothing about the
/// blob.
enum class BlobState { sound, damaged, missing, unread };

struct FoundBlob {
  BlobState state = BlobState::missing;
  Blob blob;  ///< named by the beginning of its hash while no name could be read
};

/// Reads a blob and compares it with its hash: a check of the database does not see inside a blob.
FoundBlob readBlob(SQLite::Database& database, const std::string& hash);

}  // namespace fettle
