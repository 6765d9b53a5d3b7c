#pragma once
#include <string>

#include "core/history/history.h"

namespace fettle {

// What a run begins with, and its entries.

/// What a new run of a step (and subject) is beside those before it: the first is of arrival; after a
/// setting adopted from the run before, or a part changed since, it is a corrected one; else a repeat.
RunRole roleOfNewRun(const History& history, const std::string& step, const std::string& subject);

/// The entries of the last run of a step (and subject) that carry over to a new one.
Json carriedOver(const History& history, const std::string& step, const std::string& subject);

/// Writes down when a run was measured and the settings in force then, with its first entry.
void noteMeasuring(const History& history, StepRun& run, const std::string& now);

/// Sets one top-level input; a null value takes it away.
void setEntry(StepRun& run, const std::string& key, const Json& value);

}  // namespace fettle
