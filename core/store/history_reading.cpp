#include "core/store/history_reading.h"

#include <functional>
#include <utility>

#include "core/measure/text.h"
#include "core/store/database.h"
#include "core/store/record_table.h"
#include "core/store/sql_values.h"

namespace fettle {
namespace {

/// A row that is there but cannot be what it should be.
struct Senseless {};

class Reader {
 public:
  explicit Reader(SQLite::Database& database) : m_database(database) {}

  using TakeRow = std::function<void(SQLite::Statement&)>;

  /// Gives every row of a query that ends in "ORDER BY column" to `take`, where the file is damaged some
  /// of them twice. Returns how many rows `take` could make no sense of.
  std::size_t eachRow(const std::string& what, const std::string& query, const TakeRow& take) {
    std::size_t senseless = 0;
    if (!readOneWay(query, take, senseless)) {
      note(what, m_broken);
      std::size_t again = 0;
      readOneWay(query + " DESC", take, again);
    }
    return senseless;
  }

  /// The same, where a row that makes no sense is a loss.
  void eachRecord(const std::string& what, const std::string& query, const TakeRow& take) {
    if (const std::size_t senseless = eachRow(what, query, take); senseless > 0) {
      note(what, m_senseless);
    }
  }

  void noteSenseless(const std::string& what) { note(what, m_senseless); }

  void tellLosses(std::vector<std::string>& losses) const {
    if (!m_broken.empty()) {
      losses.push_back(say(Text::tr("Could not be read in full: {0}."), m_broken));
    }
    if (!m_senseless.empty()) {
      losses.push_back(say(Text::tr("Could not be understood in part: {0}."), m_senseless));
    }
  }

 private:
  static void note(const std::string& what, std::string& list) {
    if (list.find(what) == std::string::npos) {
      list += (list.empty() ? "" : ", ") + what;
    }
  }

  /// Whether it came to the end.
  bool readOneWay(const std::string& query, const TakeRow& take, std::size_t& senseless) {
    try {
      SQLite::Statement row(m_database, query);
      while (row.executeStep()) {
        try {
          take(row);
        } catch (const Json::exception&) {
          ++senseless;
        } catch (const Senseless&) {
          ++senseless;
        }
      }
      return true;
    } catch (const SQLite::Exception& problem) {
      if (isBusy(problem)) {
        throw;
      }
      return false;
    }
  }

  SQLite::Database& m_database;
  std::string m_broken, m_senseless;  ///< what, as a list
};

std::int64_t idAt(SQLite::Statement& row, int column) {
  return row.getColumn(column).getInt64();
}

/// The records of a list or map of another record, by owner and place; read twice they stand once.
using Parts = std::map<RecordId, std::map<std::string, Json>>;

std::string placeOf(SQLite::Statement& row, const Field& field) {
  return field.kind == FieldKind::map ? textAt(row, 1) : fmt::format("{:012}", idAt(row, 1));
}

Json joined(const std::map<std::string, Json>& parts, const Field& field) {
  Json all = field.kind == FieldKind::map ? Json::object() : Json::array();
  for (const auto& [place, record] : parts) {
    field.kind == FieldKind::map ? void(all[place] = record) : all.push_back(record);
  }
  return all;
}

/// Reads one kind of record, with what hangs on it.
template <typename T>
class RecordReading {
 public:
  explicit RecordReading(Reader& reader) : m_reader(reader), m_table(tableOf(T{})) {
    for (const auto& field : m_table.fields) {
      if (hasOwnTable(field)) {
        readParts(reader, field);
      }
    }
    reader.eachRecord(m_table.label, fmt::format("SELECT * FROM {} ORDER BY id", m_table.name),
                      [&](SQLite::Statement& row) { takeRow(row); });
  }

  /// In order of id.
  std::vector<T> records() && {
    std::vector<T> ordered;
    for (auto& [id, record] : m_records) {
      ordered.push_back(std::move(record));
    }
    return ordered;
  }

 private:
  void readParts(Reader& reader, const Field& field) {
    reader.eachRecord(
        m_table.label, fmt::format("SELECT * FROM {} ORDER BY owner", partName(m_table, field)),
        [&](SQLite::Statement& row) {
          m_parts[field.key][idAt(row, 0)][placeOf(row, field)] = rowToJson(row, field.columns);
        });
  }

  void takeRow(SQLite::Statement& row) {
    const RecordId id = idAt(row, 0);
    Json json = rowToJson(row, m_table.fields);
    for (const auto& [key, owners] : m_parts) {
      if (const auto parts = owners.find(id); parts != owners.end()) {
        json[key] = joined(parts->second, *findField(m_table.fields, key));
      }
    }
    auto read = sound(json);
    if (!read) {  // what hangs on it may be to blame
      m_reader.noteSenseless(m_table.label);
      read = sound(rowToJson(row, m_table.fields));
    }
    if (!read) {
      throw Senseless{};
    }
    T record = std::move(*read);
    record.id = id;
    if constexpr (requires { record.session; }) {
      record.session = idAt(row, 1);
    }
    m_records[id] = std::move(record);
  }

  static std::optional<T> sound(const Json& json) {
    FieldReader fields = FieldReader::ofRecords();
    T record = recordFromJson<T>(json, fields);
    return fields.problem() ? std::nullopt : std::optional(std::move(record));
  }

  Reader& m_reader;
  const RecordTable& m_table;
  std::map<std::string, Parts> m_parts;
  std::map<RecordId, T> m_records;
};

template <typename T>
std::vector<T> readRecords(Reader& reader) {
  return RecordReading<T>(reader).records();
}

std::map<RecordId, Evaluated> readEvaluated(Reader& reader) {
  std::map<RecordId, Evaluated> all;
  reader.eachRow(
      Text::tr("the results"),
      "SELECT run,result,problem,evaluated_with,inputs_hash,program_version FROM results ORDER BY run",
      [&](SQLite::Statement& row) {
        all.insert_or_assign(idAt(row, 0),
                             Evaluated{resultFromJson(Json::parse(textAt(row, 1))), textAt(row, 2),
                                       Json::parse(textAt(row, 3)), textAt(row, 4), textAt(row, 5)});
      });
  return all;
}

}  // namespace

History readHistory(SQLite::Database& database, std::vector<std::string>& losses) {
  Reader reader(database);
  History history;
  if (auto machines = readRecords<MachineRecord>(reader); !machines.empty()) {
    history.machine = std::move(machines.front());
  }
  history.changes = readRecords<PartChange>(reader);
  history.sessions = readRecords<Session>(reader);
  history.runs = readRecords<StepRun>(reader);
  history.marks = readRecords<StepMark>(reader);
  history.evaluated = readEvaluated(reader);
  reader.tellLosses(losses);
  return history;
}

}  // namespace fettle
