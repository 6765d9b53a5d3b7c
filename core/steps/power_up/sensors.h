#pragma once
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/power_up/inputs.h"

namespace fettle {

/// `<heater>.rest_deviation_C` = indicated − room within 3 °C, with everything cold; the room is one
/// reading of a thermometer with e 1.0 °C (common practice, no source), the sensor's own value is what is
/// tested and taken as it is. Outside: `sensor-off-at-rest`, a fault, or a caution while the guard band
/// leaves it undecided. A sensor that comes twice is refused.
void judgeSensors(StepResult& result, const PowerUpInputs& inputs, const StepContext& context);

/// Sensors beside the room and what is allowed, with U of what each departs from the room.
Chart restChart(const PowerUpInputs& inputs, const StepContext& context);

}  // namespace fettle
