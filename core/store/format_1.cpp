#include "core/store/format_1.h"

#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <cmath>

#include "core/history/evaluation.h"
#include "core/store/blobs.h"
#include "core/store/record_rows.h"
#include "core/store/schema.h"
#include "core/store/sql_values.h"

namespace fettle {
namespace {

template <typename Take>
void eachRow(SQLite::Database& database, const char* query, const Take& take) {
  SQLite::Statement row(database, query);
  while (row.executeStep()) {
    take(row);
  }
}

// Names that changed.

/// "x.recommended" is "x.proposed", "recommended_rows" is "proposed_rows".
std::string renamedId(std::string id) {
  const std::string before = "recommended";
  if (const auto at = id.find(before); at != std::string::npos) {
    id.replace(at, before.size(), "proposed");
  }
  return id;
}

/// A sensor axis that reads backwards was written with a sign.
void renameSensorAxes(Json& inputs) {
  if (inputs.is_string()) {
    const auto& word = inputs.get_ref<const std::string&>();
    if (word == "-ax" || word == "-ay" || word == "-az") {
      inputs = word.substr(1) + "_reversed";
    }
  } else if (inputs.is_structured()) {
    for (auto& part : inputs) {
      renameSensorAxes(part);
    }
  }
}

double numberOr(const Json& json, const char* key, double otherwise) {
  const auto found = json.find(key);
  return found != json.end() && found->is_number() ? found->get<double>() : otherwise;
}

/// The greatest height noted on a graded piece; 100 mm, the height of no piece in particular, without one.
double greatestHeight(const Json& inputs) {
  double greatest = 0;
  for (const auto& row : inputs.value("bad_heights", Json::array())) {
    greatest = std::max({greatest, numberOr(row, "bad_height_mm", 0), numberOr(row, "last_good_mm", 0)});
  }
  return greatest > 0 ? greatest : 100;
}

/// A graded piece was bottom value, value per mm and height of a stair; it is said by its ends now.
void describeByEnds(Json& piece, double height) {
  if (!piece.is_object() || !piece.contains("value_per_mm")) {
    return;
  }
  const double stair = numberOr(piece, "stair_mm", 0);
  if (stair > 0) {
    const double stairs = std::max(1.0, std::ceil(height / stair));
    piece["stairs"] = stairs;
    height = stairs * stair;
  }
  const double slope = numberOr(piece, "value_per_mm", 0);
  piece["height_mm"] = height;
  if (piece.contains("bottom_value")) {
    piece["top_value"] = numberOr(piece, "bottom_value", 0) + slope * height;
  }
  piece.erase("value_per_mm");
  piece.erase("stair_mm");
}

Json renamedInputs(Json inputs) {
  renameSensorAxes(inputs);
  if (const auto graded = inputs.find("graded"); graded != inputs.end()) {
    const double height = greatestHeight(inputs);
    if (graded->is_array()) {
      for (auto& piece : *graded) {
        describeByEnds(piece, height);
      }
    } else {
      describeByEnds(*graded, height);
    }
  }
  return inputs;
}

/// The result as it was signed, without its charts, under today's names.
Json signedForm(Json result) {
  result.erase("charts");
  for (const char* list : {"quantities", "settings"}) {
    for (auto& one : result[list]) {
      one["id"] = renamedId(one.at("id").get<std::string>());
    }
  }
  Json texts = Json::object();
  for (const auto& [id, text] : result["texts"].items()) {
    texts[renamedId(id)] = text;
  }
  result["texts"] = std::move(texts);
  result["judgements"] = Json::array();
  for (const auto& [id, verdict] : result["verdicts"].items()) {
    result["judgements"].push_back(
        {{"id", renamedId(id)}, {"verdict", verdict}, {"limit", nullptr}, {"guard", 0}});
  }
  result.erase("verdicts");
  return result;
}

// The tables of format 1.

MachineRecord readMachine(SQLite::Database& database) {
  MachineRecord machine;
  eachRow(database, "SELECT key,number,text,other FROM sheet", [&](SQLite::Statement& row) {
    Json& value = machine.sheet[textAt(row, 0)];
    if (const auto number = optionalNumber(row, 1)) {
      value = *number;
    } else {
      value = row.isColumnNull(3) ? Json(textAt(row, 2)) : Json::parse(textAt(row, 3));
    }
  });
  eachRow(database, "SELECT setting,number,text,date,source FROM as_found", [&](SQLite::Statement& row) {
    machine.asFound[textAt(row, 0)] = {
        {optionalNumber(row, 1), textAt(row, 2)}, textAt(row, 3), textAt(row, 4)};
  });
  eachRow(database, "SELECT name,r,e,relative_error,unit FROM instruments ORDER BY position",
          [&](SQLite::Statement& row) {
            machine.instruments.push_back({textAt(row, 0), row.getColumn(1).getDouble(),
                                           row.getColumn(2).getDouble(), row.getColumn(3).getDouble(),
                                           textAt(row, 4)});
          });
  eachRow(database, "SELECT result,low,high FROM tolerances", [&](SQLite::Statement& row) {
    machine.tolerances[renamedId(textAt(row, 0))] = {optionalNumber(row, 1), optionalNumber(row, 2)};
  });
  return machine;
}

std::vector<StepRun> readRuns(SQLite::Database& database) {
  std::vector<StepRun> runs;
  eachRow(database, "SELECT id,session,step,subject,inputs,notes,accepted_on FROM step_runs ORDER BY id",
          [&](SQLite::Statement& row) {
            StepRun run;
            run.id = row.getColumn(0).getInt64();
            run.session = row.getColumn(1).getInt64();
            run.step = textAt(row, 2);
            run.subject = textAt(row, 3);
            run.inputs = renamedInputs(Json::parse(textAt(row, 4)));
            run.notes = textAt(row, 5);
            run.acceptedOn = textAt(row, 6);
            const bool first = std::none_of(runs.begin(), runs.end(), [&](const StepRun& earlier) {
              return earlier.step == run.step && earlier.subject == run.subject;
            });
            run.role = first ? RunRole::arrival : RunRole::repeat;
            runs.push_back(std::move(run));
          });
  const auto runOf = [&](RecordId id) {
    return std::find_if(runs.begin(), runs.end(), [&](const StepRun& run) { return run.id == id; });
  };
  eachRow(database,
          "SELECT run,setting,number,text,unit,u,expanded,date FROM adoptions ORDER BY run,position",
          [&](SQLite::Statement& row) {
            Adoption adoption{textAt(row, 1),         {optionalNumber(row, 2), textAt(row, 3)},
                              textAt(row, 4),         optionalNumber(row, 5),
                              optionalNumber(row, 6), textAt(row, 7)};
            adoption.proposed = adoption.value;  // no other value could be adopted then
            if (const auto run = runOf(row.getColumn(0).getInt64()); run != runs.end()) {
              run->adopted.push_back(std::move(adoption));
            }
          });
  eachRow(database, "SELECT run,result FROM results WHERE problem=''", [&](SQLite::Statement& row) {
    const auto run = runOf(row.getColumn(0).getInt64());
    if (run != runs.end() && run->accepted()) {
      run->signedResult = signedForm(Json::parse(textAt(row, 1)));
    }
  });
  return runs;
}

History readFormat1(SQLite::Database& database) {
  History history;
  history.machine = readMachine(database);
  eachRow(database, "SELECT id,date,part_group,note FROM part_changes ORDER BY id",
          [&](SQLite::Statement& row) {
            history.changes.push_back(
                {row.getColumn(0).getInt64(), textAt(row, 1), textAt(row, 2), textAt(row, 3)});
          });
  eachRow(database,
          "SELECT id,date,person,reason,filament,print_hours,bench_seconds FROM sessions ORDER BY id",
          [&](SQLite::Statement& row) {
            history.sessions.push_back({row.getColumn(0).getInt64(), textAt(row, 1), textAt(row, 2),
                                        textAt(row, 3), textAt(row, 4), optionalNumber(row, 5),
                                        row.getColumn(6).getDouble()});
          });
  history.runs = readRuns(database);
  eachRow(database, "SELECT id,session,step,kind,reason,date FROM step_marks ORDER BY id",
          [&](SQLite::Statement& row) {
            const auto kind =
                textAt(row, 3) == "overridden" ? StepMark::Kind::overridden : StepMark::Kind::notAffected;
            history.marks.push_back({row.getColumn(0).getInt64(), row.getColumn(1).getInt64(),
                                     textAt(row, 2), kind, textAt(row, 4), textAt(row, 5)});
          });
  return history;
}

void dropFormat1(SQLite::Database& database) {
  for (const char* table : {"proposals", "quantities", "results", "adoptions", "step_marks", "step_runs",
                            "sessions", "part_changes", "tolerances", "instruments", "as_found", "sheet"}) {
    database.exec(std::string("DROP TABLE ") + table);
  }
}

}  // namespace

void bringFormat1To2(SQLite::Database& database) {
  History history = readFormat1(database);
  IntakeFiles files([&](const Json& reference) -> tl::expected<std::string, std::string> {
    FoundBlob found = readBlob(database, reference.value("sha256", ""));
    if (found.state != BlobState::sound) {
      return tl::unexpected(found.blob.name);
    }
    return std::move(found.blob.bytes);
  });
  evaluateAll(history, files);
  dropFormat1(database);
  database.exec(recordsAndResultsSql());
  writeHistory(database, history);
}

}  // namespace fettle
