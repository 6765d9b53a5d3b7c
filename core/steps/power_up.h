#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/power_up/inputs.h"

namespace fettle {

/// Whether the machine does what it is told, cold and at its first heat. Any fault here blocks every step
/// that heats or moves, so faults are raised even while other entries are incomplete.
///
/// Devices: see power_up/devices.h. Sensors at rest: power_up/sensors.h. Runaway guard: `trip_s` from the
/// new target to the trip; no trip or never tried: fault. Rises: power_up/rises.h. `faults` counts the
/// faults among the findings. Refused: a sensor that comes twice; a guard that did not trip but has a time,
/// which leaves the guard not proved.
StepResult evaluate(const PowerUpInputs& inputs, const StepContext& context);

Step powerUpStep();

}  // namespace fettle
