#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/resonance/inputs.h"

namespace fettle {

/// Modes of each capture, the frequency of printed ripples, and for each axis the six shapers of the
/// literature with their best frequency, what they leave, and the acceleration they allow (see
/// resonance/capture.h, choice.h, ripples.h). A mode's uncertainty is the standard
/// error of its fit; the residual's follows by partial derivatives; frequency, times and limits of a shaper
/// carry that of the frequency found. Nothing is proposed for an axis without a usable capture or ripple:
/// its first mode is undecided.
StepResult evaluate(const ResonanceInputs& inputs, const StepContext& context);

Step resonanceStep();

}  // namespace fettle
