#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"
#include "core/steps/contract/finding.h"

namespace fettle {

/// What drives one axis.
struct AxisDrive {
  std::string drive;  ///< "belt", "screw" or "" while unknown
  std::optional<double> pitch, teeth, lead, stepAngle, microsteps, motorCurrent, motorRated;
  std::string currentIs;  ///< "rms", "peak" or ""
  void describe(FieldList& fields, const std::string& axis);
};

/// What is physically there. Lengths in mm, temperatures in °C.
/// Only the name is needed; a step that needs more says so.
struct MachineSheet {
  std::string name, serial, location;
  std::string motion;  ///< "cartesian", "moving-bed", "crossed-belt", "delta" or ""
  std::optional<double> travelMinX, travelMaxX, travelMinY, travelMaxY, travelMinZ, travelMaxZ;
  std::string bedShape = "rectangle";  ///< or "disc"
  std::optional<double> bedMinX, bedMaxX, bedMinY, bedMaxY, bedRadius;
  std::optional<double> nozzle, filament;
  std::string feeder;  ///< "direct", "tube" or ""
  std::optional<double> hotEndPower, hotEndMax;
  std::optional<bool> hotEndLiner;
  std::optional<double> bedPower, bedMax, supplyVoltage, supplyPower;
  AxisDrive x, y, z;

  void describe(FieldList& fields);
};

/// The fields of a sheet, described once.
const std::vector<Field>& machineSheetFields();

/// What the sheet calls a key: "Pitch x" of "x.pitch_mm".
std::string sheetLabel(const std::string& key);

/// Reads a flat object {"travel_min_x": 0, "x.pitch_mm": 2, ...}; blank fields stay blank. The error is
/// one sentence. Unknown keys are returned by name in `unknown` when it is given.
tl::expected<MachineSheet, std::string> readMachineSheet(const Json& json,
                                                         std::vector<std::string>* unknown = nullptr);

/// What does not fit together on a sheet: limits the wrong way round, a bed outside the travel, a nozzle
/// wider than the filament, heaters stronger than the supply.
std::vector<Finding> checkMachineSheet(const MachineSheet& sheet);

/// Motors that are given more than their rated current, or whose current is not said to be rms or peak.
/// Only what the sheet says; what the controller gives them is judged by the step that reviews its
/// settings.
std::vector<Finding> checkMotors(const MachineSheet& sheet);

}  // namespace fettle
