#pragma once
#include <map>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/resonance/axis_study.h"

namespace fettle {

/// Puts captures, ripples and the choice of each axis together, in the order x, y, p, q. An axis of which
/// everything was refused is among them.
std::vector<AxisStudy> studyAxes(const std::vector<AnalysisPointer>& captures,
                                 const std::vector<Ripple>& ripples,
                                 const std::map<std::string, Refusal>& refused, const ChoiceRules& rules,
                                 WorkMemory& memory, const maths::Progress& progress);

/// Modes of a capture under "<axis>.<position>.", or why there are none.
void giveCapture(const CaptureAnalysis& capture, StepResult& result);

/// Modes, candidates, proposal and settings of an axis. Belt diagonals get no settings: they compare belts,
/// a controller shapes x and y.
void giveAxis(const AxisStudy& study, const ChoiceRules& rules, const StepContext& context,
              StepResult& result);

}  // namespace fettle
