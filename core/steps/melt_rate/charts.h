#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/melt_rate/graded.h"
#include "core/steps/melt_rate/steps.h"

namespace fettle {

/// What is drawn; whatever is not known is left out.
struct MeltPicture {
  DeliveredSteps steps;
  std::optional<maths::Hinge> hinge;
  std::optional<GradedLimit> graded;
  std::optional<double> limit, safe;
  std::vector<LineSize> sizes;
};

/// Delivered against flow (or flow against height of a graded piece), and the safe speeds of line sizes.
std::vector<Chart> meltRateCharts(const MeltPicture& picture);

}  // namespace fettle
