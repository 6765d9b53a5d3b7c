#include "core/steps/melt_rate/results.h"

#include "core/measure/text.h"

namespace fettle {

void MeltRateResults::describe(ResultList& results) {
  results.quantity("flow_limit", flowLimit, Text::tr("Flow limit"), "mm3/s").headline();
  results.quantity("flow_safe", flowSafe, Text::tr("Safe flow"), "mm3/s");
  results.quantity("hinge_flow", hingeFlow, Text::tr("Hinge"), "mm3/s");
  results.quantity("plateau", plateau, Text::tr("Delivered / commanded at low flow"), "1");
  results.quantity("slope", slope, Text::tr("Fall per mm³/s beyond the hinge"), "1");
  results.quantity("line_<k>.speed_limit", speedLimit, Text::tr("Speed at the flow limit"), "mm/s");
  results.quantity("line_<k>.speed_safe", speedSafe, Text::tr("Speed at the safe flow"), "mm/s");
  results.text("line_<k>.size", lineSize, Text::tr("Line"));
  results.quantity("heat_needed_W", heatNeeded, Text::tr("Heat needed at the flow limit"), "W");
  results.quantity("heat_available_W", heatAvailable, Text::tr("Heat the heater has left"), "W");
  results.setting("flow_limit", flowLimitSetting, Text::tr("Flow limit"), "mm3/s");
  results.setting("flow_safe", flowSafeSetting, Text::tr("Safe flow"), "mm3/s");
}

}  // namespace fettle
