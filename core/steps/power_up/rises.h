#pragma once
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/power_up/inputs.h"

namespace fettle {

/// `<heater>.rate_C_per_min` = (end − start)/minutes; `<heater>.rise_in_window_C` = the rise scaled to
/// `rise_window_s` (hot end 15 s, bed 90 s, chamber 300 s); `<heater>.rise_limit_C` = max(1.5 °C, 5·s
/// at rest). A heater that comes again gets _2.
///
/// Fault `sensor-not-moving` below the limit, whose heater or sensor is loose, broken or plugged elsewhere.
/// Fault `sensors-swapped` when another sensor rose more, by at least the limit. A rise below the limit
/// over less than the window says nothing yet, because of the dead time: caution `window-not-full`.
void judgeRises(StepResult& result, const std::vector<HeatRise>& rows);

/// Temperature over time, a line for each row.
Chart risesChart(const std::vector<HeatRise>& rows);

}  // namespace fettle
