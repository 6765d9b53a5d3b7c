#pragma once
#include <optional>
#include <string>

#include "core/history/history.h"

namespace fettle {

/// Since when and why a step is due again.
struct DueReason {
  std::string date;
  std::string text;  ///< one sentence
};

/// The first change after a step's last acceptance (up to the end of a session) that makes it due: a part
/// change, a setting adopted by another step, or the acceptance of a step that disturbs a part group. None
/// when the step was never accepted, or when a mark of the session says it is not affected.
std::optional<DueReason> dueReason(const History& history, const std::string& step, RecordId session);

}  // namespace fettle
