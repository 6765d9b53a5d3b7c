#include "core/steps/axis_travel/drive.h"

namespace fettle {

std::optional<double> stepsPerMmOf(const AxisDrive& drive) {
  if (!drive.stepAngle || !drive.microsteps) {
    return std::nullopt;
  }
  const double stepsPerTurn = 360 / *drive.stepAngle * *drive.microsteps;
  if (drive.drive == "belt" && drive.pitch && drive.teeth) {
    return stepsPerTurn / (*drive.pitch * *drive.teeth);
  }
  return drive.drive == "screw" && drive.lead ? std::optional(stepsPerTurn / *drive.lead) : std::nullopt;
}

const AxisDrive& driveOf(const MachineSheet& sheet, const std::string& axis) {
  return axis == "x" ? sheet.x : axis == "y" ? sheet.y : sheet.z;
}

}  // namespace fettle
