#pragma once
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/power_up/inputs.h"

namespace fettle {

/// `devices_wrong`: rows that are not ok, each a fault `device-wrong`. Fault `stop-not-proved` until a row
/// says that the emergency stop cuts the heaters, `sensor-fault-not-proved` until one says that an
/// unplugged sensor gives a fault; caution `not-tried` for the others without an answered row. A row that
/// does not say what was tried is counted and its `device` wanted.
void judgeDevices(StepResult& result, const std::vector<DeviceCheck>& rows);

}  // namespace fettle
