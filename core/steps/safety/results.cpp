#include "core/steps/safety/results.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"

namespace fettle {

void SafetyResults::describe(ResultList& results) {
  results.name("heater", heaterChoices());
  results.quantity("critical_open", criticalOpen, Text::tr("Critical items open"), "1")
      .headline()
      .within(std::nullopt, 0.0);
  results.quantity("open_items", openItems, Text::tr("Items open"), "1").within(std::nullopt, 0.0);
  results.text("open_list", openList, Text::tr("Open"));
  results.quantity("<part>.earth_ohm", earth, Text::tr("Resistance to earth"), "ohm")
      .within(std::nullopt, earthLimit);
  results.quantity("<heater>.power_W", power, Text::tr("Power, cold"), "W").judged();
  results.quantity("<heater>.working_power_W", workingPower, Text::tr("Power at working temperature"), "W");
  results.quantity("<heater>.current_A", current, Text::tr("Current, cold"), "A");
  results.quantity("<heater>.power_ratio", powerRatio, Text::tr("Power / rated"), "1");
  results.quantity("supply_load_W", supplyPower, Text::tr("Load of the supply"), "W");
  results.quantity("supply_load", supplyLoad, Text::tr("Load / supply"), "1").within(std::nullopt, 0.8);
  results.quantity("<circuit>.wire_limit_A", wireLimit, Text::tr("Wire carries"), "A");
  results.quantity("<circuit>.fuse_margin_A", fuseMargin, Text::tr("Wire less fuse"), "A")
      .within(0.0, std::nullopt);
  results.quantity("<circuit>.load_margin_A", loadMargin, Text::tr("Fuse less load"), "A")
      .within(0.0, std::nullopt);
}

}  // namespace fettle
