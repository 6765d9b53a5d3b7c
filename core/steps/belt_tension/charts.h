#pragma once
#include <string>
#include <vector>

#include "core/steps/belt_tension/readings.h"
#include "core/steps/contract/chart.h"

namespace fettle {

/// The belts' tensions and where they should lie.
struct TensionPicture {
  std::vector<std::string> belts;
  std::vector<Quantity> tensions;
  std::vector<IntervalBand> wanted;
};

/// Tension belt by belt with U; frequencies reading by reading; the spectrum of each recording with its
/// harmonics marked, without a recording one empty spectrum that says what to enter.
std::vector<Chart> beltTensionCharts(const TensionPicture& picture, const std::vector<BeltReadings>& belts,
                                     const std::vector<HeardPitch>& heard);

}  // namespace fettle
