#pragma once
#include <string>

namespace fettle {

enum class Severity { note, caution, fault };

std::string severityKey(Severity severity);

/// One sentence of what was noticed, with the numbers behind it.
struct Finding {
  std::string code;  ///< stable word: "edge-drop"
  Severity severity = Severity::note;
  std::string text;
  std::string see;      ///< key of the step to go to; empty for none
  std::string at = {};  ///< path of the field or row it is about, "points[2].reference_C"; empty for none

  friend bool operator==(const Finding&, const Finding&) = default;
};

}  // namespace fettle
