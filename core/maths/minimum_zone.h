#pragma once
#include <cstddef>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/plane.h"

namespace fettle::maths {

/// The two parallel planes nearest together, in z, between which all points lie.
struct MinimumZone {
  Plane plane;                    ///< half-way between the two
  double width = 0;               ///< their distance along z: the flatness
  std::vector<std::size_t> high;  ///< indices of the points that touch the upper plane; all if width is 0
  std::vector<std::size_t> low;   ///< indices of the points that touch the lower plane; all if width is 0
};

/// Minimum-zone flatness (ISO 12781-1, minimum zone reference planes, with distances taken along z) of
/// three points or more: the plane with the least largest vertical distance, found exactly by exchanging
/// points of a reference of four, which is the simplex method on the dual of the Chebyshev problem
/// (Stiefel 1959, Numer. Math. 1, 1; Barrodale and Phillips 1975, ACM Trans. Math. Softw. 1, 264).
/// The width is unique; if several planes have it, one of them is given.
/// Fails on unequal counts, fewer than three points, numbers not finite, or points on one line.
Expected<MinimumZone> fitMinimumZone(std::span<const double> x, std::span<const double> y,
                                     std::span<const double> z);

}  // namespace fettle::maths
