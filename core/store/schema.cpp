#include "core/store/schema.h"

namespace fettle {

const std::string& schemaSql() {
  // A record of the history is one row of its table; what belongs to it hangs on by foreign key. A setting
  // is a number or a text. The machine sheet has one key a row: a number, a text, or as JSON in `other`
  // what is neither.
  static const std::string sql = R"(
CREATE TABLE sheet(key TEXT PRIMARY KEY, number REAL, text TEXT, other TEXT) WITHOUT ROWID;
CREATE TABLE as_found(setting TEXT PRIMARY KEY, number REAL, text TEXT NOT NULL, date TEXT NOT NULL,
                      source TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE instruments(position INTEGER PRIMARY KEY, name TEXT NOT NULL, r REAL NOT NULL, e REAL NOT NULL,
                         relative_error REAL NOT NULL, unit TEXT NOT NULL);
CREATE TABLE tolerances(result TEXT PRIMARY KEY, low REAL, high REAL) WITHOUT ROWID;
CREATE TABLE part_changes(id INTEGER PRIMARY KEY, date TEXT NOT NULL, part_group TEXT NOT NULL,
                          note TEXT NOT NULL);
CREATE TABLE sessions(id INTEGER PRIMARY KEY, date TEXT NOT NULL, person TEXT NOT NULL, reason TEXT NOT NULL,
                      filament TEXT NOT NULL, print_hours REAL, bench_seconds REAL NOT NULL);
CREATE TABLE step_runs(id INTEGER PRIMARY KEY, session INTEGER NOT NULL REFERENCES sessions(id),
                       step TEXT NOT NULL, subject TEXT NOT NULL, inputs TEXT NOT NULL, notes TEXT NOT NULL,
                       accepted_on TEXT NOT NULL);
CREATE TABLE adoptions(run INTEGER NOT NULL REFERENCES step_runs(id) ON DELETE CASCADE,
                       position INTEGER NOT NULL, setting TEXT NOT NULL, number REAL, text TEXT NOT NULL,
                       unit TEXT NOT NULL, u REAL, expanded REAL, date TEXT NOT NULL,
                       PRIMARY KEY(run, position)) WITHOUT ROWID;
CREATE TABLE step_marks(id INTEGER PRIMARY KEY, session INTEGER NOT NULL REFERENCES sessions(id),
                        step TEXT NOT NULL, kind TEXT NOT NULL CHECK(kind IN ('overridden', 'not-affected')),
                        reason TEXT NOT NULL, date TEXT NOT NULL);
CREATE TABLE results(run INTEGER PRIMARY KEY REFERENCES step_runs(id) ON DELETE CASCADE, result TEXT NOT NULL,
                     problem TEXT NOT NULL, evaluated_with TEXT NOT NULL, inputs_hash TEXT NOT NULL,
                     program_version TEXT NOT NULL, verdict TEXT NOT NULL);
CREATE TABLE quantities(run INTEGER NOT NULL REFERENCES results(run) ON DELETE CASCADE,
                        position INTEGER NOT NULL, id TEXT NOT NULL, value REAL, unit TEXT NOT NULL, u REAL,
                        dof REAL, low REAL, high REAL, why TEXT NOT NULL,
                        PRIMARY KEY(run, position)) WITHOUT ROWID;
CREATE TABLE proposals(run INTEGER NOT NULL REFERENCES results(run) ON DELETE CASCADE,
                       position INTEGER NOT NULL, setting TEXT NOT NULL, found_number REAL,
                       found_text TEXT NOT NULL, number REAL, text TEXT NOT NULL, unit TEXT NOT NULL, u REAL,
                       expanded REAL, PRIMARY KEY(run, position)) WITHOUT ROWID;
CREATE TABLE blobs(sha256 TEXT PRIMARY KEY, name TEXT NOT NULL, size INTEGER NOT NULL, bytes BLOB NOT NULL);
)";
  return sql;
}

const std::vector<Migration>& migrations() {
  static const std::vector<Migration> none;
  return none;
}

}  // namespace fettle
