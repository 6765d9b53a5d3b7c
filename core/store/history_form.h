#pragma once
#include <string>
#include <vector>

#include "core/history/history.h"

namespace fettle {

// The text exchange format as records: those of the history, and what the text has besides. One description
// reads it, writes it, and is its schema.

struct RunForm : StepRun {
  double sequence = 0;         ///< the id; 0: in the order of the text
  std::string state = "open";  ///< only "accepted" is taken; the rest follows from the readings
  void describe(FieldList& fields);
};

struct MarkForm : StepMark {
  double sequence = 0;
  void describe(FieldList& fields);
};

struct ChangeForm : PartChange {
  double sequence = 0;
  void describe(FieldList& fields);
};

struct SessionForm : Session {
  double sequence = 0;
  std::vector<RunForm> runs;
  std::vector<MarkForm> marks;
  void describe(FieldList& fields);
};

struct FileForm {
  std::string file, sha256;
  void describe(FieldList& fields);
};

/// The machine: keys of the sheet beside what a MachineRecord has. Instruments stand beside the machine.
Json machineToForm(const MachineRecord& machine);
/// What is refused is kept in the reader.
MachineRecord machineFromForm(const Json& json, FieldReader& reader);

struct HistoryForm {
  double fettle = 0;
  std::string about;
  Json machine;
  std::vector<Instrument> instruments;
  std::vector<ChangeForm> changes;
  std::vector<SessionForm> sessions;
  std::vector<FileForm> files;
  void describe(FieldList& fields);
};

/// The JSON schema of the form (resources/schema/history.schema.json), 2020-12.
Json historySchema();

}  // namespace fettle
