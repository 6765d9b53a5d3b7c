#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/melt_rate/inputs.h"

namespace fettle {

/// The flow limit from a piece whose flow grows with height.
struct GradedLimit {
  Quantity limit;
  GradedPiece piece;
  std::vector<BadHeight> heights;  ///< those that count, with the last good height filled in
};

/// Gives `flow_limit`: the middle of the interval from the value at the last good to that at the first bad
/// height, mean of the repeats. u² = w²/12 + s²/n: the interval, w the root mean square of the repeats'
/// widths, is rectangular and the same stair in every repeat, so it is not divided by n; the reading of the
/// heights is within it. With a bad height alone the last good one is the middle of the stair below, so the
/// number of stairs is needed; without it these rows are left out. A bad height not above the last good
/// one, on one stair with it, above the piece or on the first stair is refused and left out. Throws Refusal
/// for a second piece, for a flow that does not grow, and where no row counts.
/// @return none, and what is wanted in the result, while something is blank
std::optional<GradedLimit> giveGraded(StepResult& result, const MeltRateInputs& inputs);

}  // namespace fettle
