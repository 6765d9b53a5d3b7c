#pragma once
#include "core/steps/contract/step.h"
#include "tests/core/example/spool_weight/inputs.h"

namespace fettle {

/// How much filament is left: `<spool>.mass_g` is the mean of the weighings of a spool less the empty
/// spool,
/// `<spool>.length_m` that mass over density and cross-section (volume of a cylinder).
/// Refused: weighings of one spool that differ by more than 10 g.
StepResult evaluate(const SpoolWeightInputs& inputs, const StepContext& context);

Step spoolWeightStep();

}  // namespace fettle
