#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/mechanics/inputs.h"

namespace fettle {

/// An axis with its force place by place; readings at one place are averaged.
struct AxisDrag {
  std::string axis;
  std::vector<std::string> places;
  std::vector<double> forces;     ///< N, of each place
  std::vector<double> counts;     ///< readings of each place
  std::vector<std::size_t> rows;  ///< where each place is first read, as the user counts
};

/// Axes in the order they are first named, places likewise.
std::vector<AxisDrag> dragOf(const std::vector<DragReading>& readings);

/// Gives `<axis>.drag_N`, the mean over its places (the places are given, so their spread is
/// not in u; resolution over all readings and the limit of error are), and `<axis>.drag_spread` =
/// (max − min)/mean, judged: at most 0.30 (common practice, no source). In max − min the limit of error
/// cancels: u² = (r²/12)·(1/n_max + 1/n_min)/mean² + (spread·u_mean/mean)². Beyond the tolerance finding
/// `binding`; under five places `few-places`; one place or a mean of zero gives no spread.
void giveDrag(StepResult& result, const AxisDrag& drag, const StepContext& context,
              const Tolerance& allowed);

/// Force place by place, axis by axis.
Chart dragChart(const std::vector<AxisDrag>& axes);

}  // namespace fettle
