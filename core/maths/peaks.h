#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace fettle::maths {

/// A local maximum.
struct Peak {
  std::size_t index = 0;  ///< of a plateau its middle, rounded down
  double height = 0.0;
  double prominence = 0.0;  ///< height above the higher of the two lowest points that have to be crossed to
                            ///< reach higher ground, or the end, on either side
};

/// All local maxima in order: samples, or plateaus of equal samples, with a lower neighbour on both sides;
/// the first and last sample never count. Definitions of SciPy's find_peaks and peak_prominences (without
/// window length). Shape: any length, an answer for under 3 values is empty.
std::vector<Peak> findPeaks(std::span<const double> values);

}  // namespace fettle::maths
