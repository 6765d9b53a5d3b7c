#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/melt_rate/inputs.h"

namespace fettle {

/// How much plastic the hot end melts before it falls behind.
///
/// From flow steps: see melt_rate/steps.h. From a graded piece: see melt_rate/graded.h. Steps count before
/// a graded piece. `flow_safe` = (1 − margin)·lower 95 % limit of `flow_limit`. Speeds of a line: v = Q/A,
/// A = (w − h)·h + π·h²/4 for w ≥ h. Heat: `heat_needed_W` = flow_limit·(ρ/1000)·cp·(T − T_room), against
/// `heat_available_W` = hot end power·(1 − hold duty); the hold duty is typed, else (T − T_room)/gain of an
/// accepted heater-control of the hot end. Refused: fewer than three steps or different flows; of single
/// rows, which are left out: a mass that contradicts its delivered part, a bad height not above the last
/// good one, a line higher than wide.
StepResult evaluate(const MeltRateInputs& inputs, const StepContext& context);

Step meltRateStep();

}  // namespace fettle
