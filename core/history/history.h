#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/measure/instrument.h"
#include "core/measure/json.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/setting.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

// The history of one machine. Records are plain values with an id; whoever changes one makes a Change of
// the whole record (see change.h), so that undo, storage and the change signal all work the same way.
// Dates are ISO 8601 local times to the second, "2026-11-25T14:05:00".

using RecordId = std::int64_t;

/// A setting as it was on arrival.
struct FoundSetting {
  SettingValue value;
  std::string date;
  std::string source;  ///< where it was read: "typed from the machine's screen"
  friend bool operator==(const FoundSetting&, const FoundSetting&) = default;
};

/// The machine itself: one record per file, id 1.
struct MachineRecord {
  RecordId id = 1;
  Json sheet = Json::object();                  ///< keys of the machine sheet
  std::map<std::string, FoundSetting> asFound;  ///< as delivered, before the first session
  std::vector<Instrument> instruments;          ///< those of this bench, to choose from per column
  std::map<std::string, Tolerance> tolerances;  ///< by "step.result", where changed
  friend bool operator==(const MachineRecord&, const MachineRecord&) = default;
};

/// A part was changed; what becomes due follows from its group (see part_groups.h).
struct PartChange {
  RecordId id = 0;
  std::string date;
  std::string group;  ///< key of a part group
  std::string note;
  friend bool operator==(const PartChange&, const PartChange&) = default;
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
  friend bool operator==(const Session&, const Session&) = default;
};

/// A proposed setting that the user took over: as left.
struct Adoption {
  std::string setting;
  SettingValue value;
  std::string unit;
  std::optional<double> u, U;
  std::string date;
  friend bool operator==(const Adoption&, const Adoption&) = default;
};

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
  bool accepted() const { return !acceptedOn.empty(); }
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
  friend bool operator==(const StepMark&, const StepMark&) = default;
};

/// What the evaluation of a run gave, and what it was given besides the inputs. Derived: it can be made
/// again at any time and is never undone.
struct Evaluated {
  StepResult result;
  std::string problem;         ///< one sentence when the inputs were refused; the result is empty then
  Json with = Json::object();  ///< {"sheet", "as_found", "accepted", "tolerances"} as they were
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
