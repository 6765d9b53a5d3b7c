#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/filament_feed/draws.h"
#include "core/steps/filament_feed/inputs.h"

namespace fettle {

/// Drawn length over speed, and diameters place by place; empty charts say what to enter.
std::vector<Chart> filamentFeedCharts(const DrawPicture& draws, const std::vector<DiameterPlace>& places,
                                      const std::optional<double>& nominal);

}  // namespace fettle
