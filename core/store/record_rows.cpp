#include "core/store/record_rows.h"

#include "core/store/sql_values.h"

namespace fettle {
namespace {

void write(SQLite::Database& database, const MachineRecord& machine) {
  database.exec(
      "DELETE FROM sheet; DELETE FROM as_found; DELETE FROM instruments; DELETE FROM tolerances;");
  RowWriter sheet(database, "INSERT INTO sheet VALUES(?,?,?,?)");
  for (const auto& [key, value] : machine.sheet.items()) {
    sheet << key;
    sheet << (value.is_number() ? std::optional(value.get<double>()) : std::nullopt);
    sheet << (value.is_string() ? value.get<std::string>() : std::string());
    sheet << (value.is_boolean() ? std::optional(value.get<bool>() ? 1.0 : 0.0) : std::nullopt);
    sheet.run();
  }
  RowWriter found(database, "INSERT INTO as_found VALUES(?,?,?,?,?)");
  for (const auto& [setting, value] : machine.asFound) {
    found << setting << value.value.number << value.value.text << value.date << value.source;
    found.run();
  }
  RowWriter instruments(database, "INSERT INTO instruments VALUES(?,?,?,?,?,?)");
  std::int64_t position = 0;
  for (const auto& one : machine.instruments) {
    instruments << ++position << one.name << one.r << one.e << one.relativeError << one.unit;
    instruments.run();
  }
  RowWriter tolerances(database, "INSERT INTO tolerances VALUES(?,?,?)");
  for (const auto& [result, tolerance] : machine.tolerances) {
    tolerances << result << tolerance.low << tolerance.high;
    tolerances.run();
  }
}

void write(SQLite::Database& database, const PartChange& change) {
  RowWriter row(database, "INSERT OR REPLACE INTO part_changes VALUES(?,?,?,?)");
  row << change.id << change.date << change.group << change.note;
  row.run();
}

void write(SQLite::Database& database, const Session& session) {
  RowWriter row(database, "INSERT OR REPLACE INTO sessions VALUES(?,?,?,?,?,?,?)");
  row << session.id << session.date << session.person << session.reason << session.filament
      << session.printHours << session.benchSeconds;
  row.run();
}

void write(SQLite::Database& database, const StepRun& run) {
  // An upsert, not a replacement: results hang on the row.
  RowWriter row(
      database,
      "INSERT INTO step_runs VALUES(?,?,?,?,?,?,?) ON CONFLICT(id) DO UPDATE SET session=excluded.session, "
      "step=excluded.step, subject=excluded.subject, inputs=excluded.inputs, notes=excluded.notes, "
      "accepted_on=excluded.accepted_on");
  row << run.id << run.session << run.step << run.subject << run.inputs.dump() << run.notes
      << run.acceptedOn;
  row.run();
  RowWriter clear(database, "DELETE FROM adoptions WHERE run=?");
  clear << run.id;
  clear.run();
  RowWriter adoption(database, "INSERT INTO adoptions VALUES(?,?,?,?,?,?,?,?,?)");
  std::int64_t position = 0;
  for (const auto& one : run.adopted) {
    adoption << run.id << ++position << one.setting << one.value.number << one.value.text << one.unit
             << one.u << one.U << one.date;
    adoption.run();
  }
}

void write(SQLite::Database& database, const StepMark& mark) {
  RowWriter row(database, "INSERT OR REPLACE INTO step_marks VALUES(?,?,?,?,?,?)");
  row << mark.id << mark.session << mark.step
      << std::string(mark.kind == StepMark::Kind::overridden ? "overridden" : "not-affected") << mark.reason
      << mark.date;
  row.run();
}

const char* tableOf(const MachineRecord&) {
  return nullptr;
}
const char* tableOf(const PartChange&) {
  return "part_changes";
}
const char* tableOf(const Session&) {
  return "sessions";
}
const char* tableOf(const StepRun&) {
  return "step_runs";
}
const char* tableOf(const StepMark&) {
  return "step_marks";
}

std::map<RecordId, std::vector<Adoption>> readAdoptions(SQLite::Database& database) {
  std::map<RecordId, std::vector<Adoption>> adopted;
  SQLite::Statement row(
      database, "SELECT run,setting,number,text,unit,u,expanded,date FROM adoptions ORDER BY run,position");
  while (row.executeStep()) {
    Adoption one;
    one.setting = textAt(row, 1);
    one.value = {optionalNumber(row, 2), textAt(row, 3)};
    one.unit = textAt(row, 4);
    one.u = optionalNumber(row, 5);
    one.U = optionalNumber(row, 6);
    one.date = textAt(row, 7);
    adopted[row.getColumn(0).getInt64()].push_back(std::move(one));
  }
  return adopted;
}

}  // namespace

void writeRecord(SQLite::Database& database, const Record& record) {
  std::visit([&](const auto& known) { write(database, known); }, record);
}

void removeRecord(SQLite::Database& database, const Record& record) {
  const char* table = std::visit([](const auto& known) { return tableOf(known); }, record);
  if (table) {
    RowWriter row(database, std::string("DELETE FROM ") + table + " WHERE id=?");
    row << idOf(record);
    row.run();
  }
}

void writeEvaluated(SQLite::Database& database, RecordId run, const Evaluated& evaluated) {
  RowWriter clear(database, "DELETE FROM results WHERE run=?");
  clear << run;
  clear.run();
  RowWriter result(database, "INSERT INTO results VALUES(?,?,?,?,?,?,?)");
  result << run << toJson(evaluated.result).dump() << evaluated.problem << evaluated.with.dump()
         << evaluated.inputsHash << evaluated.programVersion << verdictKey(evaluated.result.verdict());
  result.run();
  RowWriter quantity(database, "INSERT INTO quantities VALUES(?,?,?,?,?,?,?,?,?,?)");
  std::int64_t position = 0;
  for (const auto& value : evaluated.result.values) {
    const Quantity q = value.quantity.value_or(Quantity{});
    const auto there = [&](const std::optional<double>& part) {
      return value.quantity ? part : std::nullopt;
    };
    const bool finite = q.u && q.dof < infiniteDegreesOfFreedom;
    quantity << run << ++position << value.id << there(q.value) << value.unit << there(q.u)
             << (finite ? std::optional(q.dof) : std::nullopt) << there(q.low) << there(q.high)
             << value.why;
    quantity.run();
  }
  RowWriter proposal(database, "INSERT INTO proposals VALUES(?,?,?,?,?,?,?,?,?)");
  position = 0;
  for (const auto& one : evaluated.result.settings) {
    proposal << run << ++position << one.id << one.asFound.number << one.asFound.text << one.proposed.number
             << one.proposed.text << one.unit << one.u;
    proposal.run();
  }
}

MachineRecord readMachine(SQLite::Database& database) {
  MachineRecord machine;
  SQLite::Statement sheet(database, "SELECT key,number,text,truth FROM sheet");
  while (sheet.executeStep()) {
    Json& value = machine.sheet[textAt(sheet, 0)];
    if (const auto number = optionalNumber(sheet, 1)) {
      value = *number;
    } else if (!sheet.isColumnNull(3)) {
      value = sheet.getColumn(3).getInt() != 0;
    } else {
      value = textAt(sheet, 2);
    }
  }
  SQLite::Statement found(database, "SELECT setting,number,text,date,source FROM as_found");
  while (found.executeStep()) {
    machine.asFound[textAt(found, 0)] = {
        {optionalNumber(found, 1), textAt(found, 2)}, textAt(found, 3), textAt(found, 4)};
  }
  SQLite::Statement row(database, "SELECT name,r,e,relative_error,unit FROM instruments ORDER BY position");
  while (row.executeStep()) {
    machine.instruments.push_back({textAt(row, 0), row.getColumn(1).getDouble(),
                                   row.getColumn(2).getDouble(), row.getColumn(3).getDouble(),
                                   textAt(row, 4)});
  }
  SQLite::Statement tolerance(database, "SELECT result,low,high FROM tolerances");
  while (tolerance.executeStep()) {
    machine.tolerances[textAt(tolerance, 0)] = {optionalNumber(tolerance, 1), optionalNumber(tolerance, 2)};
  }
  return machine;
}

std::vector<PartChange> readPartChanges(SQLite::Database& database) {
  std::vector<PartChange> changes;
  SQLite::Statement row(database, "SELECT id,date,part_group,note FROM part_changes ORDER BY id");
  while (row.executeStep()) {
    changes.push_back({row.getColumn(0).getInt64(), textAt(row, 1), textAt(row, 2), textAt(row, 3)});
  }
  return changes;
}

std::vector<Session> readSessions(SQLite::Database& database) {
  std::vector<Session> sessions;
  SQLite::Statement row(
      database,
      "SELECT id,date,person,reason,filament,print_hours,bench_seconds FROM sessions ORDER BY id");
  while (row.executeStep()) {
    sessions.push_back({row.getColumn(0).getInt64(), textAt(row, 1), textAt(row, 2), textAt(row, 3),
                        textAt(row, 4), optionalNumber(row, 5), row.getColumn(6).getDouble()});
  }
  return sessions;
}

std::vector<StepRun> readRuns(SQLite::Database& database) {
  auto adopted = readAdoptions(database);
  std::vector<StepRun> runs;
  SQLite::Statement row(
      database, "SELECT id,session,step,subject,inputs,notes,accepted_on FROM step_runs ORDER BY id");
  while (row.executeStep()) {
    StepRun run;
    run.id = row.getColumn(0).getInt64();
    run.session = row.getColumn(1).getInt64();
    run.step = textAt(row, 2);
    run.subject = textAt(row, 3);
    run.inputs = Json::parse(textAt(row, 4));
    run.notes = textAt(row, 5);
    run.acceptedOn = textAt(row, 6);
    run.adopted = std::move(adopted[run.id]);
    runs.push_back(std::move(run));
  }
  return runs;
}

std::vector<StepMark> readMarks(SQLite::Database& database) {
  std::vector<StepMark> marks;
  SQLite::Statement row(database, "SELECT id,session,step,kind,reason,date FROM step_marks ORDER BY id");
  while (row.executeStep()) {
    StepMark mark;
    mark.id = row.getColumn(0).getInt64();
    mark.session = row.getColumn(1).getInt64();
    mark.step = textAt(row, 2);
    mark.kind = textAt(row, 3) == "overridden" ? StepMark::Kind::overridden : StepMark::Kind::notAffected;
    mark.reason = textAt(row, 4);
    mark.date = textAt(row, 5);
    marks.push_back(std::move(mark));
  }
  return marks;
}

std::map<RecordId, Evaluated> readEvaluated(SQLite::Database& database) {
  std::map<RecordId, Evaluated> all;
  SQLite::Statement row(
      database, "SELECT run,result,problem,evaluated_with,inputs_hash,program_version FROM results");
  while (row.executeStep()) {
    Evaluated evaluated;
    evaluated.result = resultFromJson(Json::parse(textAt(row, 1)));
    evaluated.problem = textAt(row, 2);
    evaluated.with = Json::parse(textAt(row, 3));
    evaluated.inputsHash = textAt(row, 4);
    evaluated.programVersion = textAt(row, 5);
    all[row.getColumn(0).getInt64()] = std::move(evaluated);
  }
  return all;
}

}  // namespace fettle
