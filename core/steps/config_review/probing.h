#pragma once
#include "core/steps/config_review/review.h"
#include "core/steps/contract/reach.h"

namespace fettle {

/// Probe reach over the bed with the offset as found, bed and travel of the sheet. `safe_min_x` to
/// `safe_max_y`: where the tip can touch the plate, no margin taken off (probe-position does); `no-reach`
/// (fault): nowhere. A grid as found is where the tip is meant to land: `probe-off-bed` (fault) for each
/// limit beyond the plate, `probe-out-of-reach` (fault) for each one that needs the carriage, at limit −
/// offset, outside its travel. `limits-reversed` (fault): a grid the wrong way round.
void judgeProbing(StepResult& result, const Review& review);

/// Bed, travel, reach of the tip and probing grid as known.
Chart reviewPlan(const Review& review);

}  // namespace fettle
