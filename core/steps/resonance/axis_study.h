#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/resonance/analysis.h"
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
  std::optional<Refusal> refused;  ///< the first of its captures or ripples that was
  std::optional<ShaperChoice> choice;

  /// The modes with the largest residual under the proposed shaper; null without a choice.
  const ModeSet* deciding() const { return choice ? &sets[choice->best().decidingSet] : nullptr; }
};

}  // namespace fettle
