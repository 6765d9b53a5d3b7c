#pragma once
#include <optional>
#include <vector>

#include "core/steps/bed_shape/faults.h"
#include "core/steps/bed_shape/form.h"
#include "core/steps/contract/chart.h"

namespace fettle {

/// Height map, the same with the tilt removed, and cuts along x and y with the tilt removed. Points that
/// fill no net have the fitted quadratic surface as a map, and their own heights as points; a grid with
/// blank cells has itself as a map. Without a form the heights are drawn as places alone. With nothing
/// given all four are empty and say what to enter.
std::vector<Chart> bedShapeCharts(const BedHeights& heights, const std::optional<BedForm>& form,
                                  const std::optional<GridFaults>& faults);

}  // namespace fettle
