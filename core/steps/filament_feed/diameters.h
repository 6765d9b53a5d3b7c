#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/filament_feed/inputs.h"

namespace fettle {

/// Gives nothing without places. `diameter_mean`: mean of the places' means, u² = s²/n of them + r²/(12·2n)
/// + e²/3. `ovality`: the greatest |first − second| of any place; the limit of error cancels, u =
/// r·√(2/12). `flow_effect` = (mean/nominal)² − 1: flow more than with the sheet's nominal diameter, u =
/// 2·mean·u/nominal².
void giveDiameters(StepResult& result, const std::vector<DiameterPlace>& places,
                   const StepContext& context);

}  // namespace fettle
