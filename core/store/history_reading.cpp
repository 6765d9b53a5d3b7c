#include "core/store/history_reading.h"

#include <functional>
#include <utility>

#include "core/measure/text.h"
#include "core/store/database.h"
#include "core/store/sql_values.h"

namespace fettle {
namespace {

class Reader {
 public:
  explicit Reader(SQLite::Database& database) : m_database(database) {}

  using TakeRow = std::function<void(SQLite::Statement&)>;

  /// Gives every row of a query that ends in "ORDER BY column" to `take`, where the file is damaged some
  /// of them twice. Returns how many rows `take` could make no sense of.
  std::size_t eachRow(const std::string& what, const std::string& query, const TakeRow& take) {
    std::size_t senseless = 0;
    if (!readOneWay(query, take, senseless)) {
      m_broken += (m_broken.empty() ? "" : ", ") + what;
      std::size_t again = 0;
      readOneWay(query + " DESC", take, again);
    }
    return senseless;
  }

  /// The same, where a row that makes no sense is a loss.
  void eachRecord(const std::string& what, const std::string& query, const TakeRow& take) {
    if (const std::size_t senseless = eachRow(what, query, take); senseless > 0) {
      m_senseless += (m_senseless.empty() ? "" : ", ") + what;
    }
  }

  void tellLosses(std::vector<std::string>& losses) const {
    if (!m_broken.empty()) {
      losses.push_back(say(Text::tr("Could not be read in full: {0}."), m_broken));
    }
    if (!m_senseless.empty()) {
      losses.push_back(say(Text::tr("Could not be understood in part: {0}."), m_senseless));
    }
  }

 private:
  /// Whether it came to the end.
  bool readOneWay(const std::string& query, const TakeRow& take, std::size_t& senseless) {
    try {
      SQLite::Statement row(m_database, query);
      while (row.executeStep()) {
        try {
          take(row);
        } catch (const Json::exception&) {
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

double numberAt(SQLite::Statement& row, int column) {
  return row.getColumn(column).getDouble();
}

/// The records of a map, in order of id.
template <typename Key, typename T>
std::vector<T> inOrder(std::map<Key, T> records) {
  std::vector<T> ordered;
  ordered.reserve(records.size());
  for (auto& [key, record] : records) {
    ordered.push_back(std::move(record));
  }
  return ordered;
}

MachineRecord readMachine(Reader& reader) {
  MachineRecord machine;
  reader.eachRecord(Text::tr("the machine sheet"), "SELECT key,number,text,other FROM sheet ORDER BY key",
                    [&](SQLite::Statement& row) {
                      if (const auto number = optionalNumber(row, 1)) {
                        machine.sheet[textAt(row, 0)] = *number;
                      } else if (row.isColumnNull(3)) {
                        machine.sheet[textAt(row, 0)] = textAt(row, 2);
                      } else {
                        machine.sheet[textAt(row, 0)] = Json::parse(textAt(row, 3));
                      }
                    });
  reader.eachRecord(Text::tr("the settings as found"),
                    "SELECT setting,number,text,date,source FROM as_found ORDER BY setting",
                    [&](SQLite::Statement& row) {
                      machine.asFound[textAt(row, 0)] = {
                          {optionalNumber(row, 1), textAt(row, 2)}, textAt(row, 3), textAt(row, 4)};
                    });
  std::map<std::int64_t, Instrument> instruments;
  reader.eachRecord(Text::tr("the instruments"),
                    "SELECT position,name,r,e,relative_error,unit FROM instruments ORDER BY position",
                    [&](SQLite::Statement& row) {
                      instruments[idAt(row, 0)] = {textAt(row, 1), numberAt(row, 2), numberAt(row, 3),
                                                   numberAt(row, 4), textAt(row, 5)};
                    });
  machine.instruments = inOrder(std::move(instruments));
  reader.eachRecord(Text::tr("the tolerances"), "SELECT result,low,high FROM tolerances ORDER BY result",
                    [&](SQLite::Statement& row) {
                      machine.tolerances[textAt(row, 0)] = {optionalNumber(row, 1), optionalNumber(row, 2)};
                    });
  return machine;
}

std::vector<PartChange> readPartChanges(Reader& reader) {
  std::map<RecordId, PartChange> changes;
  reader.eachRecord(Text::tr("the part changes"),
                    "SELECT id,date,part_group,note FROM part_changes ORDER BY id",
                    [&](SQLite::Statement& row) {
                      const RecordId id = idAt(row, 0);
                      changes[id] = {id, textAt(row, 1), textAt(row, 2), textAt(row, 3)};
                    });
  return inOrder(std::move(changes));
}

std::vector<Session> readSessions(Reader& reader) {
  std::map<RecordId, Session> sessions;
  reader.eachRecord(
      Text::tr("the sessions"),
      "SELECT id,date,person,reason,filament,print_hours,bench_seconds FROM sessions ORDER BY id",
      [&](SQLite::Statement& row) {
        const RecordId id = idAt(row, 0);
        sessions[id] = {id,
                        textAt(row, 1),
                        textAt(row, 2),
                        textAt(row, 3),
                        textAt(row, 4),
                        optionalNumber(row, 5),
                        numberAt(row, 6)};
      });
  return inOrder(std::move(sessions));
}

std::vector<StepRun> readRuns(Reader& reader) {
  std::map<RecordId, StepRun> runs;
  reader.eachRecord(Text::tr("the step records"),
                    "SELECT id,session,step,subject,inputs,notes,accepted_on FROM step_runs ORDER BY id",
                    [&](SQLite::Statement& row) {
                      const RecordId id = idAt(row, 0);
                      runs[id] = {id,
                                  idAt(row, 1),
                                  textAt(row, 2),
                                  textAt(row, 3),
                                  Json::parse(textAt(row, 4)),
                                  textAt(row, 5),
                                  textAt(row, 6),
                                  {}};
                    });
  std::map<RecordId, std::map<std::int64_t, Adoption>> adopted;
  reader.eachRecord(
      Text::tr("the settings as left"),
      "SELECT run,position,setting,number,text,unit,u,expanded,date FROM adoptions ORDER BY run",
      [&](SQLite::Statement& row) {
        adopted[idAt(row, 0)][idAt(row, 1)] = {
            textAt(row, 2),         {optionalNumber(row, 3), textAt(row, 4)},
            textAt(row, 5),         optionalNumber(row, 6),
            optionalNumber(row, 7), textAt(row, 8)};
      });
  for (auto& [id, adoptions] : adopted) {
    if (const auto run = runs.find(id); run != runs.end()) {
      run->second.adopted = inOrder(std::move(adoptions));
    }
  }
  return inOrder(std::move(runs));
}

std::vector<StepMark> readMarks(Reader& reader) {
  std::map<RecordId, StepMark> marks;
  reader.eachRecord(Text::tr("the marks"),
                    "SELECT id,session,step,kind,reason,date FROM step_marks ORDER BY id",
                    [&](SQLite::Statement& row) {
                      const RecordId id = idAt(row, 0);
                      const auto kind = textAt(row, 3) == "overridden" ? StepMark::Kind::overridden
                                                                       : StepMark::Kind::notAffected;
                      marks[id] = {id, idAt(row, 1), textAt(row, 2), kind, textAt(row, 4), textAt(row, 5)};
                    });
  return inOrder(std::move(marks));
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
  history.machine = readMachine(reader);
  history.changes = readPartChanges(reader);
  history.sessions = readSessions(reader);
  history.runs = readRuns(reader);
  history.marks = readMarks(reader);
  history.evaluated = readEvaluated(reader);
  reader.tellLosses(losses);
  return history;
}

}  // namespace fettle
