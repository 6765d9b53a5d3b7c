#pragma once
#include <string>
#include <tl/expected.hpp>

#include "core/history/history.h"

namespace fettle {

// One record each way. Reading throws Json::exception on a value of the wrong kind; importHistory turns
// that into a sentence.

Json toJson(const MachineRecord& machine);
MachineRecord machineFromJson(const Json& json);
Json toJson(const Instrument& instrument);
Instrument instrumentFromJson(const Json& json);
Json toJson(const PartChange& change);
PartChange partChangeFromJson(const Json& json);
/// Without runs and marks.
Json toJson(const Session& session);
Session sessionFromJson(const Json& json);
Json toJson(const StepRun& run);
StepRun runFromJson(const Json& json);
Json toJson(const StepMark& mark);
StepMark markFromJson(const Json& json);

}  // namespace fettle
