#include "core/store/record_rows.h"

#include "core/store/sql_values.h"

namespace fettle {
namespace {

void write(SQLite::Database& database, const MachineRecord& machine) {
  database.exec(
      "DELETE FROM sheet; DELETE FROM as_found; DELETE FROM instruments; DELETE FROM tolerances;");
  RowWriter sheet(database, "INSERT INTO sheet VALUES(?,?,?,?)");
  for (const auto& [key, value] : machine.sheet.items()) {
    const bool number = value.is_number();
    const bool text = value.is_string();
    sheet << key << (number ? std::optional(value.get<double>()) : std::nullopt)
          << (text ? std::optional(value.get<std::string>()) : std::nullopt)
          << (number || text ? std::nullopt : std::optional(value.dump()));
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
  RowWriter proposal(database, "INSERT INTO proposals VALUES(?,?,?,?,?,?,?,?,?,?)");
  position = 0;
  for (const auto& one : evaluated.result.settings) {
    proposal << run << ++position << one.id << one.asFound.number << one.asFound.text << one.proposed.number
             << one.proposed.text << one.unit << one.u << one.U;
    proposal.run();
  }
}

}  // namespace fettle
