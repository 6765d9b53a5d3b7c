#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/quantity.h"

namespace fettle {

/// A setting of the machine: a number in a fixed unit, or a word.
struct SettingValue {
  std::optional<double> number;
  std::string text;
  bool blank() const { return !number && text.empty(); }
  friend bool operator==(const SettingValue&, const SettingValue&) = default;
};

using SettingValues = std::map<std::string, SettingValue>;

/// A setting as the steps know it.
struct SettingDescription {
  std::string id;     ///< may hold <axis>: "<axis>.acceleration"
  std::string label;  ///< as said at the machine
  std::string unit;   ///< unit key; empty for a word
};

/// What a step would put in place of the value found.
struct SettingProposal {
  std::string id;
  SettingValue asFound;
  SettingValue proposed;
  std::string unit;
  std::optional<double> u, U;
};

/// "x.acceleration" matches "<axis>.acceleration": every <name> stands for one part between dots.
bool matchesPattern(const std::string& id, const std::string& pattern);

}  // namespace fettle
