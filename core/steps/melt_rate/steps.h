#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/melt_rate/flow_limit.h"
#include "core/steps/melt_rate/inputs.h"

namespace fettle {

inline constexpr double mm3PerCm3 = 1000;

/// Flow steps as they are fitted, in the order of the rows.
struct DeliveredSteps {
  std::vector<double> flow, delivered;
  std::vector<std::size_t> rows;  ///< as the user counts
  double commonError =
      0;  ///< limit of error of the scale as a part of what was commanded, mean of all steps
  double resolution = 0;  ///< its resolution in the same way
  std::vector<double> excludedFlow, excludedDelivered;
};

/// Delivered part of each step: as typed, or mass/(volume·density/1000). Rows that wait for an entry are
/// left out and its path is added to `lacks`; rows whose mass and delivered part contradict each other are
/// left out and refused.
DeliveredSteps deliveredSteps(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
                              std::vector<std::string>& lacks);

/// Whether there are three steps of three different flows.
bool areEnough(const DeliveredSteps& steps);

/// Fits a plateau with a falling line (see maths/hinge.h) and gives `plateau`, `slope`, `hinge_flow` and
/// `flow_limit` = hinge_flow + 0.05·plateau/slope, the flow at which delivery is 5 % below the plateau.
/// Intervals of hinge and limit are profiles, (RSS − RSS_min)/(RSS_min/(n − 3)) ≤ F(0.95; 1, n − 3); an end
/// that meets the tested range is not known and not given (`hinge-not-bracketed`). A flow limit beyond the
/// tested flows is given as the continuation of the line (`limit-beyond-data`), but nothing follows from
/// it. u of plateau and slope: linearised at the solution with n − 3 degrees of freedom, and the scale's
/// limit of error, common to all steps: once in the plateau, once over the span beyond the hinge in the
/// slope. In hinge and limit it all but cancels. An error of density or volume scales plateau and slope
/// alike and cancels there too. Throws Refusal for fewer than three steps or three different flows.
FlowLimit giveHinge(StepResult& result, const DeliveredSteps& steps);

}  // namespace fettle
