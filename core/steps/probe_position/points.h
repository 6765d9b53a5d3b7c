#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/probe_position/inputs.h"
#include "core/steps/probe_position/plan.h"

namespace fettle {

/// The probing grid as typed or, where blank, as in force.
struct PlannedGrid {
  std::optional<ProbingGrid> grid;
  std::string why;  ///< when it is not known
};

/// Throws Refusal for limits the wrong way round and counts that are no grid.
PlannedGrid plannedGrid(const ProbePositionInputs& inputs, const StepContext& context);

/// Gives `points_off_bed`, `points_in_margin` and `points_out_of_reach` of probe-position with their lists
/// and findings, and returns the landings. Without the offset in force nobody knows where the controller
/// sends the carriage: then, and without grid, bed or travel, they are withheld with the reason. The plan
/// must hold the offset.
std::vector<Landing> giveProbingPoints(StepResult& result, const PlannedGrid& planned,
                                       const PlanOfBed& plan, const std::optional<Place>& inForce);

}  // namespace fettle
