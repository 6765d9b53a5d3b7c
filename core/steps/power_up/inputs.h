#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"
#include "core/steps/contract/machine_sheet.h"

namespace fettle {

/// What is tried at a power-up.
std::vector<Choice> devicesToTry();
/// What is looked at during and after the first heat.
std::vector<Choice> firstHeatItems();

/// One thing that was tried, what should have happened and what did.
struct DeviceCheck : TableRow {
  std::string device;  ///< "axis_direction", "home_switch", ... (see power_up/devices.h)
  std::string which, expected, observed;
  std::optional<bool> ok;
  void describe(FieldList& columns);
};

/// A temperature sensor with everything cold.
struct RestReading : TableRow {
  std::string heater;
  std::optional<double> indicated;
  void describe(FieldList& columns);
};

/// A short heating with its own sensor and the one of them all that rose most besides.
struct HeatRise : TableRow {
  std::string heater;
  std::optional<double> start, end, seconds, otherRise, restScatter, window;
  void describe(FieldList& columns);
};

struct PowerUpInputs {
  std::vector<DeviceCheck> devices;
  std::optional<double> room;  ///< °C
  std::vector<RestReading> sensors;
  std::optional<bool> tripped;
  std::optional<double> tripTime;  ///< s
  std::vector<HeatRise> rises;
  std::vector<ChecklistAnswer> firstHeat;
  void describe(FieldList& fields);
};

/// Rows of `devices` for what this machine has, with what is expected of each.
Json devicesOf(const MachineSheet& sheet);

}  // namespace fettle
