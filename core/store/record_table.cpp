#include "core/store/record_table.h"

#include <SQLiteCpp/Column.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <functional>
#include <set>

#include "core/measure/text.h"

namespace fettle {
namespace {

enum Table { machineTable, changesTable, sessionsTable, runsTable, marksTable };

std::string typeOf(const Field& field) {
  switch (field.kind) {
    case FieldKind::number:
      return " REAL";
    case FieldKind::yesNo:
      return " INTEGER";
    case FieldKind::value:
      return "";  // a number stays a number, a text a text
    default:
      return " TEXT";
  }
}

/// The database does not tell "u" from "U".
std::string columnName(const std::string& key) {
  std::string name;
  for (const char letter : key) {
    const auto byte = static_cast<unsigned char>(letter);
    if (std::isupper(byte) != 0) {
      name += "capital_";
    }
    name += static_cast<char>(std::tolower(byte));
  }
  return name;
}

std::string quoted(const std::string& name) {
  return '"' + name + '"';
}

/// Calls `visit` with the name and the type of each column a field has in its table.
void eachColumn(const std::vector<Field>& fields,
                const std::function<void(const std::string&, const std::string&)>& visit) {
  for (const auto& field : fields) {
    if (!hasOwnTable(field)) {
      visit(quoted(columnName(field.key)), typeOf(field));
    }
  }
}

std::string columnsSql(const std::vector<Field>& fields) {
  std::string sql;
  eachColumn(fields, [&](const std::string& name, const std::string& type) { sql += ", " + name + type; });
  return sql;
}

std::string createPartSql(const RecordTable& table, const Field& field) {
  const char* place = field.kind == FieldKind::map ? "name TEXT" : "position INTEGER";
  return fmt::format(
      "CREATE TABLE {}(owner INTEGER NOT NULL REFERENCES {}(id) ON DELETE CASCADE, {} NOT NULL{}, "
      "PRIMARY KEY(owner, {})) WITHOUT ROWID;\n",
      partName(table, field), table.name, place, columnsSql(field.columns),
      field.kind == FieldKind::map ? "name" : "position");
}

void bindJson(SQLite::Statement& statement, int place, const Json& value) {
  if (value.is_null()) {
    statement.bind(place);
  } else if (value.is_boolean()) {
    statement.bind(place, value.get<bool>() ? 1 : 0);
  } else if (value.is_number()) {
    statement.bind(place, value.get<double>());
  } else if (value.is_string()) {
    statement.bind(place, value.get<std::string>());
  } else {
    statement.bind(place, value.dump());
  }
}

Json member(const Json& record, const std::string& key) {
  const auto found = record.find(key);
  return found == record.end() ? Json() : *found;
}

/// One statement for all rows of a table; the first columns are told apart by `bindPlace`.
class RowStatement {
 public:
  RowStatement(SQLite::Database& database, const std::string& table, const std::string& places,
               int placeCount, const std::vector<Field>& fields, const std::string& ending)
      : m_fields(fields),
        m_placeCount(placeCount),
        m_statement(database, sqlOf(table, places, fields, ending)) {}

  SQLite::Statement& statement() { return m_statement; }

  void write(const Json& record) {
    int place = m_placeCount;
    for (const auto& field : m_fields) {
      if (!hasOwnTable(field)) {
        bindJson(m_statement, ++place, member(record, field.key));
      }
    }
    m_statement.exec();
    m_statement.reset();
  }

 private:
  static std::string sqlOf(const std::string& table, const std::string& places,
                           const std::vector<Field>& fields, const std::string& ending) {
    std::string columns = places;
    eachColumn(fields, [&](const std::string& name, const std::string&) { columns += ", " + name; });
    std::string marks = "?";
    for (std::ptrdiff_t i = std::count(columns.begin(), columns.end(), ','); i > 0; --i) {
      marks += ",?";
    }
    return fmt::format("INSERT INTO {}({}) VALUES({}){}", table, columns, marks, ending);
  }

  const std::vector<Field>& m_fields;
  int m_placeCount;
  SQLite::Statement m_statement;
};

void writePart(SQLite::Database& database, const RecordTable& table, const Field& field, RecordId owner,
               const Json& records) {
  const std::string name = partName(table, field);
  SQLite::Statement clear(database, "DELETE FROM " + name + " WHERE owner=?");
  clear.bind(1, owner);
  clear.exec();
  if (records.empty()) {
    return;
  }
  const bool named = field.kind == FieldKind::map;
  RowStatement rows(database, name, named ? "owner, name" : "owner, position", 2, field.columns, "");
  std::int64_t position = 0;
  for (const auto& [key, record] : records.items()) {
    rows.statement().bind(1, owner);
    named ? rows.statement().bind(2, key) : rows.statement().bind(2, ++position);
    rows.write(record);
  }
}

/// An upsert, not a replacement: results hang on the row.
std::string conflictSql(const RecordTable& table) {
  std::string sql;
  const auto set = [&](const std::string& name) {
    sql +=
        fmt::format("{}{}=excluded.{}", sql.empty() ? " ON CONFLICT(id) DO UPDATE SET " : ", ", name, name);
  };
  if (table.ofSession) {
    set("session");
  }
  eachColumn(table.fields, [&](const std::string& name, const std::string&) { set(name); });
  return sql;
}

std::set<std::string> columnsOf(SQLite::Database& database, const std::string& table) {
  std::set<std::string> names;
  SQLite::Statement info(database, "SELECT name FROM pragma_table_info(?)");
  info.bind(1, table);
  while (info.executeStep()) {
    names.insert(quoted(info.getColumn(0).getString()));
  }
  return names;
}

void addColumns(SQLite::Database& database, const std::string& table, const std::set<std::string>& known,
                const std::vector<Field>& fields) {
  eachColumn(fields, [&](const std::string& name, const std::string& type) {
    if (known.count(name) == 0) {
      database.exec(fmt::format("ALTER TABLE {} ADD COLUMN {}{}", table, name, type));
    }
  });
}

}  // namespace

const std::vector<RecordTable>& recordTables() {
  static const std::vector<RecordTable> tables{
      {"machine", Text::tr("the machine sheet"), describedFields<MachineRecord>(), false},
      {"part_changes", Text::tr("the part changes"), describedFields<PartChange>(), false},
      {"sessions", Text::tr("the sessions"), describedFields<Session>(), false},
      {"step_runs", Text::tr("the step records"), describedFields<StepRun>(), true},
      {"step_marks", Text::tr("the marks"), describedFields<StepMark>(), true}};
  return tables;
}

const RecordTable& tableOf(const MachineRecord&) {
  return recordTables()[machineTable];
}
const RecordTable& tableOf(const PartChange&) {
  return recordTables()[changesTable];
}
const RecordTable& tableOf(const Session&) {
  return recordTables()[sessionsTable];
}
const RecordTable& tableOf(const StepRun&) {
  return recordTables()[runsTable];
}
const RecordTable& tableOf(const StepMark&) {
  return recordTables()[marksTable];
}

bool hasOwnTable(const Field& field) {
  return field.kind == FieldKind::list || field.kind == FieldKind::map;
}

std::string partName(const RecordTable& table, const Field& field) {
  return table.name + "_" + field.key;
}

std::string createSql(const RecordTable& table) {
  std::string sql = fmt::format("CREATE TABLE {}(id INTEGER PRIMARY KEY{}{});\n", table.name,
                                table.ofSession ? ", session INTEGER NOT NULL REFERENCES sessions(id)" : "",
                                columnsSql(table.fields));
  for (const auto& field : table.fields) {
    if (hasOwnTable(field)) {
      sql += createPartSql(table, field);
    }
  }
  return sql;
}

void addWhatIsLacking(SQLite::Database& database) {
  for (const auto& table : recordTables()) {
    const auto columns = columnsOf(database, table.name);
    if (columns.empty()) {
      continue;  // that is damage, which reading tells
    }
    addColumns(database, table.name, columns, table.fields);
    for (const auto& field : table.fields) {
      if (!hasOwnTable(field)) {
        continue;
      }
      const std::string part = partName(table, field);
      if (const auto known = columnsOf(database, part); known.empty()) {
        database.exec(createPartSql(table, field));
      } else {
        addColumns(database, part, known, field.columns);
      }
    }
  }
}

void writeRow(SQLite::Database& database, const RecordTable& table, RecordId id, RecordId session,
              const Json& record) {
  RowStatement row(database, table.name, table.ofSession ? "id, session" : "id", table.ofSession ? 2 : 1,
                   table.fields, conflictSql(table));
  row.statement().bind(1, id);
  if (table.ofSession) {
    row.statement().bind(2, session);
  }
  row.write(record);
  for (const auto& field : table.fields) {
    if (hasOwnTable(field)) {
      writePart(database, table, field, id, member(record, field.key));
    }
  }
}

Json rowToJson(SQLite::Statement& row, const std::vector<Field>& fields) {
  Json record = Json::object();
  for (int i = 0; i < row.getColumnCount(); ++i) {
    const std::string name = row.getColumnName(i);
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const Field& known) { return columnName(known.key) == name; });
    if (field == fields.end() || row.isColumnNull(i)) {
      continue;
    }
    const SQLite::Column column = row.getColumn(i);
    const bool isJson = field->kind == FieldKind::object || field->kind == FieldKind::values;
    record[field->key] = isJson                                   ? Json::parse(column.getString())
                         : field->kind == FieldKind::yesNo        ? Json(column.getInt() != 0)
                         : column.isInteger() || column.isFloat() ? Json(column.getDouble())
                                                                  : Json(column.getString());
  }
  return record;
}

}  // namespace fettle
