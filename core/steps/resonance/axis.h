#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/contract/work_memory.h"
#include "core/steps/resonance/capture.h"
#include "core/steps/resonance/choice.h"
#include "core/steps/resonance/ripples.h"

namespace fettle {

/// Everything known of one axis.
struct AxisStudy {
  std::string axis;
  std::vector<AnalysisPointer> captures;
  const Ripple* ripple = nullptr;
  std::vector<ModeSet> sets;  ///< of the usable captures, else of the ripple; the choice rests on them
  bool restsOnRipple = false;
  std::optional<ShaperChoice> choice;

  /// The modes with the largest residual under the recommended shaper; null without a choice.
  const ModeSet* deciding() const { return choice ? &sets[choice->best().decidingSet] : nullptr; }
};

/// Puts captures, ripples and the choice of each axis together, in the order x, y, p, q.
std::vector<AxisStudy> studyAxes(const std::vector<AnalysisPointer>& captures,
                                 const std::vector<Ripple>& ripples, const ChoiceRules& rules,
                                 WorkMemory& memory, const maths::Progress& progress);

/// Modes of a capture under "<axis>.<position>.", or why there are none.
void giveCapture(const CaptureAnalysis& capture, StepResult& result);

/// Modes, candidates, recommendation and settings of an axis. Belt diagonals get no settings: they compare
/// belts, a controller shapes x and y.
void giveAxis(const AxisStudy& study, const ChoiceRules& rules, const StepContext& context,
              StepResult& result);

}  // namespace fettle
