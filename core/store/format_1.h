#pragma once
#include <SQLiteCpp/Database.h>

namespace fettle {

/// Turns an open file of format 1 into one of format 2, inside the caller's transaction. Readings keep
/// their values under today's names; a result that was accepted is kept as it was signed, and today's is
/// computed beside it. Throws SQLite::Exception, and Json::exception where a record makes no sense.
void bringFormat1To2(SQLite::Database& database);

}  // namespace fettle
