#pragma once
#include <vector>

#include "core/fields/field.h"
#include "core/history/history.h"

namespace fettle::ui {

// The lists of a machine as tables for InputForm: fields, rows, and back into the record.

std::vector<Field> foundFields();
Json foundRows(const MachineRecord& machine);
void takeFoundRows(const Json& rows, const std::string& date, MachineRecord& machine);
/// The first value that is words where the setting is a number; row from 1, no sentence: none.
struct FoundProblem {
  int row = 0;
  std::string sentence;
};
FoundProblem foundProblem(const Json& rows);

std::vector<Field> instrumentFields();
Json instrumentRows(const MachineRecord& machine);
void takeInstrumentRows(const Json& rows, MachineRecord& machine);

/// One row for each judged result of the catalogue.
std::vector<Field> toleranceFields();
Json toleranceRows(const MachineRecord& machine);
void takeToleranceRows(const Json& rows, MachineRecord& machine);

}  // namespace fettle::ui
