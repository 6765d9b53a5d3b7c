#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/quantity.h"
#include "core/measure/setting_value.h"

namespace fettle {

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
