#pragma once
#include <vector>

#include "core/steps/belt_tension/readings.h"
#include "core/steps/contract/chart.h"

namespace fettle {

/// Frequencies reading by reading, and the spectrum of each recording with its harmonics marked; without a
/// recording one empty spectrum that says what to enter.
std::vector<Chart> beltTensionCharts(const std::vector<BeltReadings>& belts,
                                     const std::vector<HeardPitch>& heard);

}  // namespace fettle
