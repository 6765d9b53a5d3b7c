#pragma once
#include <vector>

#include "core/steps/contract/step.h"
#include "core/steps/resonance/capture.h"
#include "core/steps/resonance/ripples.h"

namespace fettle {

/// What rings on each axis, and the input shaper and acceleration that leave little of it in a print.
struct ResonanceInputs {
  std::vector<VibrationCapture> captures;
  std::vector<RippleRow> ripples;
  double segmentTime = 1.28;         ///< s
  double designDamping = 0.05;       ///< common practice, no source
  double frequencyAllowance = 0.05;  ///< share of a mode's frequency
  double residualLimit = 0.05;
  double pathDeviation = 0.1;  ///< mm

  void describe(FieldList& fields);
};

/// Modes of each capture, the frequency of printed ripples, and for each axis the six shapers of the
/// literature with their best frequency, what they leave, and the acceleration they allow (see
/// resonance/capture.h, choice.h, ripples.h). A mode's uncertainty is the standard
/// error of its fit; the residual's follows by partial derivatives; frequency, times and limits of a shaper
/// carry that of the frequency found. Nothing is proposed for an axis without a usable capture or ripple:
/// its first mode is undecided.
StepResult evaluate(const ResonanceInputs& inputs, const StepContext& context);

Step resonanceStep();

}  // namespace fettle
