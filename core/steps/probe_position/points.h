#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/probe_position.h"
#include "core/steps/probe_position/plan.h"

namespace fettle {

/// The probing grid as typed or, where blank, as found.
struct PlannedGrid {
  std::optional<ProbingGrid> grid;
  std::string why;  ///< when it is not known
};

/// Throws Refusal for limits the wrong way round and counts that are no grid.
PlannedGrid plannedGrid(const ProbePositionInputs& inputs, const StepContext& context);

/// Gives `points_off_bed`, `points_in_margin` and `points_out_of_reach` of probe-position with their lists
/// and findings, and returns the landings. Without the offset as found nobody knows where the controller
/// sends the carriage: then, and without grid, bed or travel, they are withheld with the reason.
std::vector<Landing> giveProbingPoints(StepResult& result, const PlannedGrid& planned,
                                       const PlanOfBed& plan, const std::optional<Place>& asFound);

}  // namespace fettle
