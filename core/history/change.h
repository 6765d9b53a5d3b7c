#pragma once
#include <optional>
#include <string>
#include <variant>

#include "core/history/history.h"

namespace fettle {

/// Any record of a history.
using Record = std::variant<MachineRecord, PartChange, Session, StepRun, StepMark>;

RecordId idOf(const Record& record);

/// The only way a history changes: one record is added (no before), replaced, or removed (no after).
/// Swapping the two sides gives the change that takes it back.
struct Change {
  std::optional<Record> before, after;
  std::string what;  ///< for the undo menu: "margin", "row 3, probe x"

  Change reversed() const { return {after, before, what}; }
  bool isNothing() const { return before == after; }
};

/// Carries a change out in memory. Throws std::logic_error when `before` is not what is there: a bug.
void apply(const Change& change, History& history);

}  // namespace fettle
