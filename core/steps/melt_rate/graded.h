#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/melt_rate.h"

namespace fettle {

/// The flow limit from a piece whose flow grows with height.
struct GradedLimit {
  Quantity limit;
  GradedPiece piece;
  std::vector<BadHeight> heights;  ///< with the last good height filled in
};

/// Gives `flow_limit`: bottom_value + value_per_mm·height in the middle of the interval from the last good
/// to the first bad height, mean of the repeats. u² = (w·value_per_mm)²/12 + s²/n: the interval, w the
/// root mean square of its heights, is rectangular and the same stair in every repeat, so it is not divided
/// by n; the reading of the heights is within it. With a bad height alone the last good one is a stair
/// below. What is blank is added to the result's `missing`. Throws Refusal for a second piece, for a bad
/// height not above the last good one, or one within the first stair.
std::optional<GradedLimit> giveGraded(StepResult& result, const MeltRateInputs& inputs);

}  // namespace fettle
