#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/history/history.h"

namespace fettle {

/// A capture whose content in a machine file is not what was taken in, or is gone.
struct DamagedCapture {
  std::string name;
  std::vector<std::string> usedBy;  ///< "Resonance of 2026-03-02"
};

/// Reads every capture a history refers to from its file and compares it with its hash: a check of the
/// database does not see inside a content. Has a connection of its own, for another thread, and holds the
/// file for the length of one capture only; a capture another program keeps from being read is passed over.
/// @param stopped asked before each capture
std::vector<DamagedCapture> damagedCaptures(const std::string& path, const History& history,
                                            const std::function<bool()>& stopped = {});

/// One sentence that names them and says what is lost; empty when there are none.
std::string damageSentence(const std::vector<DamagedCapture>& captures);

}  // namespace fettle
