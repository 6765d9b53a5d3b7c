#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/filament_feed/inputs.h"

namespace fettle {

/// How much filament the feeder really draws, and how thick it is.
///
/// `feed_steps_per_mm` = in force / `drawn_ratio`, relative uncertainties alike; the ratio and the slip
/// from draws, see filament_feed/draws.h; diameters, see filament_feed/diameters.h. `moisture_lost` =
/// 100·(mass before − mass after)/mass before in %; the scale's limit of error cancels in the difference.
/// Without draws the step is incomplete, and gives what else was entered.
StepResult evaluate(const FilamentFeedInputs& inputs, const StepContext& context);

Step filamentFeedStep();

}  // namespace fettle
