#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

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

/// Whether the machine does what it is told, cold and at its first heat. Any fault here blocks every step
/// that heats or moves, so faults are raised even while other entries are incomplete.
///
/// Devices: see power_up/devices.h. Sensors at rest: `<heater>.rest_deviation_C` = indicated − room within
/// 3 °C; the room is one reading of a thermometer with e 1.0 °C (common practice, no source), the sensor's
/// own value is what is tested and taken as it is; outside: `sensor-off-at-rest`,
/// a fault, or a caution while the guard band leaves it undecided. Runaway guard:
/// `trip_s` from the new target to the trip; no trip or never tried: fault. Rises: see power_up/rises.h.
/// Refused: a sensor that comes twice, a guard that did not trip but has a time.
StepResult evaluate(const PowerUpInputs& inputs, const StepContext& context);

Step powerUpStep();

}  // namespace fettle
