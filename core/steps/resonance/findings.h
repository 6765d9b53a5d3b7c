#pragma once
#include "core/steps/contract/step_context.h"
#include "core/steps/resonance/axis_study.h"

namespace fettle {

/// What is wrong with a capture: gap, jitter, clipped, rate-too-low, resolution-too-coarse, sweep-too-fast,
/// sweep-cut-short, no-mode, excitation-unknown.
void findInCapture(const CaptureAnalysis& capture, StepResult& result);

/// Where crests may be counted, and whether the ripple is the mode the captures show: ripple-start,
/// ripple-disagrees.
void findInRipple(const AxisStudy& study, const StepContext& context, StepResult& result);

/// What a choice says of the machine: heavy-damping, stiffen-frame.
void findInChoice(const AxisStudy& study, const ChoiceRules& rules, StepResult& result);

}  // namespace fettle
