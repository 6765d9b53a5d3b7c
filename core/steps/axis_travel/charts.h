#pragma once
#include <vector>

#include "core/steps/axis_travel/runs.h"
#include "core/steps/contract/chart.h"

namespace fettle {

/// For each axis the deviations as ISO 230-2 draws them: means from both sides with whiskers of ±2 s over
/// the targets, their mean, and A, E, M and B as dimensions; and the reversal of each target with its U.
/// Without moves one empty chart.
std::vector<Chart> axisTravelCharts(const std::vector<AxisRuns>& axes, const std::vector<AxisMove>& moves,
                                    const Instrument& instrument);

}  // namespace fettle
