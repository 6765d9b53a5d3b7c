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

/// What a step would put in place of the value in force.
struct SettingProposal {
  std::string id;
  SettingValue asFound;  ///< on arrival
  SettingValue inForce;  ///< while the run was measured
  SettingValue proposed;
  std::string unit;
  std::optional<double> u, U;
  std::vector<std::string> names;  ///< labels of what stands for the <names> of the id
};

}  // namespace fettle
