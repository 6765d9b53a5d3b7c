#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/fields/field_list.h"
#include "core/measure/instrument.h"
#include "core/measure/json.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/setting.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

// The history of one machine. Records are plain values with an id; whoever changes one makes a Change of
// the whole record (see change.h), so that undo, storage and the change signal all work the same way. Each
// record describes its fields once, in records.cpp: tables of the machine file, text exchange and schema
// follow from that. Ids rise in the order in which records were entered.
// Dates are ISO 8601 local times to the second, "2026-11-25T14:05:00".

using RecordId = std::int64_t;

/// A setting as it was on arrival.
struct FoundSetting {
  SettingValue value;
  std::string date;
  std::string source;  ///< where it was read: "typed from the machine's screen"
  void describe(FieldList& fields);
  friend bool operator==(const FoundSetting&, const FoundSetting&) = default;
};

/// The machine itself: one record per file, id 1.
struct MachineRecord {
  RecordId id = 1;
  Json sheet = Json::object();                  ///< keys of the machine sheet
  std::map<std::string, FoundSetting> asFound;  ///< as delivered, before the first session
  std::vector<Instrument> instruments;          ///< those of this bench, to choose from per column
  std::map<std::string, Tolerance> tolerances;  ///< by "step.result", where changed
  std::string checksum = {};                    ///< over the record's content; empty: none was made
  void describe(FieldList& fields);
  /// What stands beside the sheet and the instruments: as found, tolerances.
  void describeBesideSheet(FieldList& fields);
  friend bool operator==(const MachineRecord&, const MachineRecord&) = default;
};

/// A part was changed; what becomes due follows from its group (see part_groups.h).
struct PartChange {
  RecordId id = 0;
  std::string date;   ///< on which the part was changed
  std::string group;  ///< key of a part group
  std::string note;
  std::string enteredOn = {};  ///< when it was written down; empty: on the date itself
  std::string checksum = {};
  void describe(FieldList& fields);
  friend bool operator==(const PartChange&, const PartChange&) = default;
};

/// A report that was handed over.
struct IssuedReport {
  double number = 0;  ///< counted per machine, from 1
  std::string date;
  std::string sha256;  ///< of the file
  void describe(FieldList& fields);
  friend bool operator==(const IssuedReport&, const IssuedReport&) = default;
};

/// One visit to the machine. The last one is open; earlier ones are read only.
struct Session {
  RecordId id = 0;
  std::string date;
  std::string person;  ///< operator
  std::string reason;
  std::string filament;
  std::optional<double> printHours;  ///< of the machine so far, as asked at the start
  double benchSeconds = 0;           ///< time at the bench so far
  std::string timeZone = {};         ///< of its dates, "+01:00"; empty: not known
  std::vector<IssuedReport> reports = {};
  std::string checksum = {};
  void describe(FieldList& fields);
  friend bool operator==(const Session&, const Session&) = default;
};

/// A setting that the user took over: as left.
struct Adoption {
  std::string setting;
  SettingValue value;  ///< the proposed one, or the user's own
  std::string unit;
  std::optional<double> u, U;  ///< of the proposed value
  std::string date;            ///< of the decision
  SettingValue proposed = {};  ///< what the run proposed
  std::string reason = {};     ///< why the own value was preferred
  std::string enteredOn = {};  ///< when it was entered at the machine; empty: not said yet
  bool isOwnValue() const { return !proposed.blank() && value != proposed; }
  void describe(FieldList& fields);
  friend bool operator==(const Adoption&, const Adoption&) = default;
};

/// A slip of the keyboard put right in a run that stands as evidence.
struct Correction {
  std::string date;
  std::string field;          ///< key of the input
  std::string before, after;  ///< as JSON; empty: blank
  std::string reason;
  void describe(FieldList& fields);
  friend bool operator==(const Correction&, const Correction&) = default;
};

/// A picture that belongs to a run, kept like every file taken in.
struct Photo {
  std::string file, sha256;
  std::string caption;
  void describe(FieldList& fields);
  friend bool operator==(const Photo&, const Photo&) = default;
};

/// What a run is beside the other runs of its step: the machine as it came, after something was changed
/// because of an earlier run, or the same once more.
enum class RunRole { arrival, corrected, repeat };

/// One run of a step in a session.
struct StepRun {
  RecordId id = 0;
  RecordId session = 0;
  std::string step;
  std::string subject;  ///< what the run is about, the key of a heater; or empty
  Json inputs = Json::object();
  std::string notes;
  std::string acceptedOn;  ///< empty: not accepted
  std::vector<Adoption> adopted;
  std::string measuredOn = {};  ///< date of its first entry
  RunRole role = RunRole::arrival;
  SettingValues inForce = {};          ///< of the settings its step knows, while it was measured
  std::string acceptReason = {};       ///< why it was accepted although something spoke against it
  Json signedResult = Json::object();  ///< toJson(StepResult) without charts, as it was accepted
  std::vector<Correction> corrections = {};
  std::vector<Photo> photos = {};
  Json piece =
      Json::object();  ///< the test piece that was printed: name, parameters, SHA-256 of its program
  std::string checksum = {};
  bool accepted() const { return !acceptedOn.empty(); }
  /// It stands as evidence: an edit begins a new run.
  bool settled() const { return accepted() || !adopted.empty(); }
  void describe(FieldList& fields);
  friend bool operator==(const StepRun&, const StepRun&) = default;
};

/// A written decision about a step in a session: a gate overridden, or a due step said not to be affected.
struct StepMark {
  enum class Kind { overridden, notAffected };
  RecordId id = 0;
  RecordId session = 0;
  std::string step;
  Kind kind = Kind::overridden;
  std::string reason;
  std::string date;
  std::string checksum = {};
  void describe(FieldList& fields);
  friend bool operator==(const StepMark&, const StepMark&) = default;
};

/// What the evaluation of a run gave, and what it was given besides the inputs. Derived: it can be made
/// again at any time and is never undone.
struct Evaluated {
  StepResult result;
  std::string problem;         ///< one sentence when the inputs were refused; the result is empty then
  Json with = Json::object();  ///< the snapshot it was evaluated with (evaluation.h)
  std::string inputsHash;      ///< of the inputs it belongs to
  std::string programVersion;
  /// Neither refused nor with needed entries missing.
  bool complete() const { return problem.empty() && result.complete; }
};

struct History {
  MachineRecord machine;
  std::vector<PartChange> changes;
  std::vector<Session> sessions;
  std::vector<StepRun> runs;
  std::vector<StepMark> marks;
  std::map<RecordId, Evaluated> evaluated;  ///< by run

  const Session* session(RecordId id) const;
  const StepRun* run(RecordId id) const;
  /// The date on which a session ended: the beginning of the next; empty for the last one.
  std::string endOf(RecordId session) const;
  /// The runs of a step in a session, in order.
  std::vector<const StepRun*> runsOf(const std::string& step, RecordId session) const;
  /// The last accepted run of a step, of whatever subject, up to and including a session; null: never
  /// accepted.
  const StepRun* lastAccepted(const std::string& step, RecordId upToSession) const;
  /// An id no record of this history has.
  RecordId nextId() const;
};

}  // namespace fettle
