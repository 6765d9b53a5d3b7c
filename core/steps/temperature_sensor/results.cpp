#include "core/steps/temperature_sensor/results.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"

namespace fettle {

void TemperatureSensorResults::describe(ResultList& results) {
  results.name("heater", heaterChoices());
  results.quantity("<heater>.largest_deviation_C", largestDeviation, Text::tr("Largest deviation"), "C")
      .headline()
      .within(-5.0, 5.0);  // common practice, no source
  results.quantity("<heater>.offset_C", offset, Text::tr("Offset"), "C");
  results.quantity("<heater>.slope", slope, Text::tr("Slope"), "1");
  results.quantity("<heater>.bias_factor", biasFactor, Text::tr("Real / configured bias resistor"), "1");
  results.quantity("<heater>.bias_ohm", biasOhm, Text::tr("Bias resistor that would fit"), "ohm");
  results.text("<heater>.likely_curves", likelyCurves, Text::tr("Curves that fit better"));
  results.setting("<heater>.sensor_curve", sensorCurve, Text::tr("Sensor curve"), "");
}

}  // namespace fettle
