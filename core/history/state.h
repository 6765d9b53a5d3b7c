#pragma once
#include <string>
#include <vector>

#include "core/history/history.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// Where a step stands in a session.
enum class StepState { empty, incomplete, computed, accepted, due, blocked, notAffected, overridden };

/// The word on a screen: "empty", "incomplete", ...
std::string stateWord(StepState state);
/// The glyph before it: "·", "◌", "◐", "✓", "↻", "■", "–", "△".
std::string stateGlyph(StepState state);

/// A step's state and the sentence behind it: since when and why it is due, what blocks it, why it was
/// overridden.
struct StepStanding {
  StepState state = StepState::empty;
  std::string why;
  bool olderValues = false;  ///< the shown run was evaluated with values that have changed since
};

/// Where one run stands by itself: empty, incomplete, computed or accepted.
StepState stateOfRun(const History& history, const StepRun& run);

/// Pure: from the history alone. A step accepted in an earlier session stays accepted until something
/// makes it due.
StepStanding standingOf(const History& history, const Step& step, RecordId session);

}  // namespace fettle
