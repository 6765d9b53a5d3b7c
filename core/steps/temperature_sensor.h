#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/temperature_sensor/inputs.h"

namespace fettle {

/// How true a temperature sensor reads, and what is wrong when it does not.
///
/// Deviation = indicated − reference; `<heater>.largest_deviation_C` keeps its sign. Its verdict counts
/// readings up to 250 °C only, above no tolerance is named. `reference = offset_C + slope·indicated` by
/// least squares; the reference's limit of error is common: e/√3 in the offset, e/√3 over the span in the
/// slope. Wrong curve: see temperature_sensor/search.h. Outliers about the line
/// are marked from five points on. One point gives its deviation. Refused: the line and the search for
/// curves where all indications are equal within the resolution.
StepResult evaluate(const TemperatureSensorInputs& inputs, const StepContext& context);

Step temperatureSensorStep();

}  // namespace fettle
