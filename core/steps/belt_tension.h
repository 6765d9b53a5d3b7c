#pragma once
#include "core/steps/belt_tension/inputs.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// Tension of a belt from the note of a free span.
///
/// `<belt>.frequency_hz`: mean of the plucks and recordings of a belt, see belt_tension/readings.h.
/// `<belt>.tension_N` = 4·m·L²·f²·1e-9 with m in g/m and L in mm (equation of the ideal string), relative
/// u² = (u_m/m)² + (2 u_L/L)² + (2 u_f/f)². Judged against target_N ± its share unless the user set another
/// tolerance. On a crossed-belt motion two belts (any but one named z) are compared: `tension_difference` =
/// (T1 − T2)/mean, within ±10 % (common practice, no source), only where their spans differ by no more than
/// 1 mm; mass and limits of error are common to both belts and cancel.
/// Refused: a belt with two lengths; a recording that is unevenly sampled or too short.
StepResult evaluate(const BeltTensionInputs& inputs, const StepContext& context);

Step beltTensionStep();

}  // namespace fettle
