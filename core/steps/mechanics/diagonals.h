#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/mechanics/inputs.h"

namespace fettle {

/// A face with all its readings.
struct MeasuredFace {
  std::string id, name;
  double length = 0;                ///< mm, over which the limit counts
  std::vector<double> differences;  ///< p − q, mm
  std::vector<std::size_t> rows;    ///< of the differences, as the user counts
};

/// Faces in the order they are first named. A face is refused and left out where a diagonal is not longer
/// than its edge, or where it has two edges.
std::vector<MeasuredFace> facesOf(StepResult& result, const std::vector<FaceDiagonals>& diagonals);

/// Gives `<face>.diagonal_difference` = mean of p − q in mm, judged: within ±1 mm per 500 mm of the face's
/// length (common practice, no source) unless the user set another tolerance. In the difference of two
/// about equal readings the limit of error cancels: u² = s²/n + 2·r²/(12·n); with a rule for each diagonal
/// their limits of error count too. Finding `out-of-square` beyond the limit; outliers
/// among the repeats of a face are marked.
void giveDiagonals(StepResult& result, const std::vector<MeasuredFace>& faces, const StepContext& context);

/// Difference per 500 mm, face by face, with U of the mean.
Chart diagonalsChart(const std::vector<MeasuredFace>& faces, const StepContext& context);

}  // namespace fettle
