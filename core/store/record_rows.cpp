#include "core/store/record_rows.h"

#include "core/store/record_table.h"
#include "core/store/sql_values.h"

namespace fettle {
namespace {

template <typename T>
RecordId sessionOf(const T& record) {
  if constexpr (requires { record.session; }) {
    return record.session;
  }
  return 0;
}

}  // namespace

void writeRecord(SQLite::Database& database, const Record& record) {
  std::visit(
      [&](const auto& known) {
        writeRow(database, tableOf(known), known.id, sessionOf(known), recordToJson(known));
      },
      record);
}

void removeRecord(SQLite::Database& database, const Record& record) {
  if (std::holds_alternative<MachineRecord>(record)) {
    return;
  }
  const std::string& table =
      std::visit([](const auto& known) -> const std::string& { return tableOf(known).name; }, record);
  RowWriter row(database, "DELETE FROM " + table + " WHERE id=?");
  row << idOf(record);
  row.run();
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
  RowWriter proposal(database, "INSERT INTO proposals VALUES(?,?,?,?,?,?,?,?,?,?,?,?)");
  position = 0;
  for (const auto& one : evaluated.result.settings) {
    proposal << run << ++position << one.id << one.asFound.number << one.asFound.text << one.inForce.number
             << one.inForce.text << one.proposed.number << one.proposed.text << one.unit << one.u << one.U;
    proposal.run();
  }
}

void writeHistory(SQLite::Database& database, const History& history) {
  const auto writeAll = [&](const auto& records) {
    for (const auto& record : records) {
      writeRecord(database, record);
    }
  };
  writeRecord(database, history.machine);
  writeAll(history.changes);
  writeAll(history.sessions);
  writeAll(history.runs);
  writeAll(history.marks);
  for (const auto& [run, evaluated] : history.evaluated) {
    writeEvaluated(database, run, evaluated);
  }
}

}  // namespace fettle
