#include "core/maths/decimate.h"

#include <algorithm>
#include <limits>

namespace fettle::maths {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// The column a value lies in, as its two edges.
struct Column {
  double from, to;

  bool holds(double x) const { return x >= from && x < to; }
};

Column columnOf(double x, std::span<const double> edges) {
  const auto above = std::upper_bound(edges.begin(), edges.end(), x);
  return {above == edges.begin() ? -infinity : *(above - 1), above == edges.end() ? infinity : *above};
}

void append(std::vector<std::size_t>& indices, std::size_t index) {
  if (indices.empty() || index > indices.back()) {
    indices.push_back(index);
  }
}

}  // namespace

std::vector<std::size_t> decimated(std::span<const double> x, std::span<const double> y,
                                   std::span<const double> edges) {
  std::vector<std::size_t> kept;
  if (x.empty()) {
    return kept;
  }
  kept.reserve(std::min(x.size(), 2 * edges.size() + 4));
  kept.push_back(0);
  for (std::size_t i = 0; i < x.size();) {
    const Column column = columnOf(x[i], edges);
    std::size_t lowest = i, highest = i;
    double low = infinity, high = -infinity;
    do {
      if (y[i] < low) {
        low = y[i];
        lowest = i;
      }
      if (y[i] > high) {
        high = y[i];
        highest = i;
      }
      ++i;
    } while (i < x.size() && column.holds(x[i]));
    append(kept, std::min(lowest, highest));
    append(kept, std::max(lowest, highest));
  }
  append(kept, x.size() - 1);
  return kept;
}

}  // namespace fettle::maths
