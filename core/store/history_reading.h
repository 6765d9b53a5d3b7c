#pragma once
#include <SQLiteCpp/Database.h>

#include <string>
#include <vector>

#include "core/history/history.h"

namespace fettle {

/// Everything in a file but the blobs; inside a transaction, as it is at one moment. Of a damaged file what
/// can be read: each table stands for itself, and where one breaks off its other end is read too; `losses`
/// says in sentences what is missing. A result that makes no sense is no loss: it is computed again. Throws
/// SQLite::Exception when another program does not let go of the file.
History readHistory(SQLite::Database& database, std::vector<std::string>& losses);

}  // namespace fettle
