#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/history/history.h"

namespace fettle {

/// A file that was taken in, as runs refer to it.
struct UsedFile {
  std::string name;
  std::vector<std::string> usedBy;  ///< "Resonance of 2026-03-02"
};

struct FilesCheck {
  std::vector<UsedFile> damaged;  ///< what is kept of them is not what was taken in, or is gone
  std::vector<UsedFile> unread;   ///< kept from being read, by another program as a rule: nothing is known
};

/// Reads every file a history refers to from its machine file and compares it with its hash. Has a
/// connection of its own, for another thread, and holds the machine file for the length of one file only.
/// @param stopped asked before each file
FilesCheck checkFiles(const std::string& path, const History& history,
                      const std::function<bool()>& stopped = {});

/// One sentence that names damaged files and says what is lost; empty when there are none.
std::string damageSentence(const std::vector<UsedFile>& damaged);

}  // namespace fettle
