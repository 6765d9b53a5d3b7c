#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace fettle::maths {

/// Indices, rising, of the points that draw a curve as all of them would on a picture whose columns lie
/// between `edges` (rising): of every run of neighbours within one column the first one with the lowest y
/// and the first one with the highest, so that no peak is lost, and the first and the last point of the
/// curve. Runs left of the first edge and right of the last one count as columns too, so that lines leave
/// the picture where they should. x need not rise. x and y are of one length. A y that
/// is not a number hides no peak, but may be among the points kept.
std::vector<std::size_t> decimated(std::span<const double> x, std::span<const double> y,
                                   std::span<const double> edges);

}  // namespace fettle::maths
