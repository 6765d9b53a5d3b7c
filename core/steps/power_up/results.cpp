#include "core/steps/power_up/results.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"

namespace fettle {

void PowerUpResults::describe(ResultList& results) {
  results.name("heater", heaterChoices());
  results.quantity("faults", faults, Text::tr("Faults"), "1").headline().within(std::nullopt, 0.0);
  results.quantity("devices_wrong", devicesWrong, Text::tr("Devices wrong"), "1");
  results.quantity("<heater>.rest_deviation_C", restDeviation, Text::tr("Cold, less room"), "C")
      .within(-restLimit, restLimit);
  results.quantity("trip_s", trip, Text::tr("Runaway guard trips after"), "s").judged();
  results.quantity("<heater>.rate_C_per_min", rate, Text::tr("Rate"), "C/min");
  results.quantity("<heater>.rise_in_window_C", riseInWindow, Text::tr("Rise in the window"), "C");
  results.quantity("<heater>.rise_limit_C", riseLimit, Text::tr("Least rise"), "C");
}

}  // namespace fettle
