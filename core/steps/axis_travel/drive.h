#pragma once
#include <optional>
#include <string>

#include "core/steps/contract/machine_sheet.h"

namespace fettle {

/// 360/step angle·microsteps/(pitch·teeth) of a belt, …/lead of a screw; none while a part is not on the
/// sheet.
std::optional<double> stepsPerMmOf(const AxisDrive& drive);

/// What drives the axis according to the sheet.
const AxisDrive& driveOf(const MachineSheet& sheet, const std::string& axis);

}  // namespace fettle
