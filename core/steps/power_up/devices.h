#pragma once
#include <vector>

#include "core/steps/power_up.h"

namespace fettle {

/// What is tried at a power-up.
std::vector<Choice> devicesToTry();

/// `devices_wrong`: rows that are not ok, each a fault `device-wrong`. Fault `stop-not-proved` until a row
/// says that the emergency stop cuts the heaters, `sensor-fault-not-proved` until one says that an
/// unplugged sensor gives a fault; caution `not-tried` for the others without a row. A row without an
/// answer is named in `result.missing`.
void judgeDevices(StepResult& result, const std::vector<DeviceCheck>& rows);

}  // namespace fettle
