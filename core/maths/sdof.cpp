#include "core/maths/sdof.h"

#include <cmath>
#include <numbers>

namespace fettle::maths {
namespace {

/// Distance in Hz from the peak to where the density crosses half its height in the direction of `step`.
std::optional<double> halfWidth(std::span<const double> frequency, std::span<const double> density,
                                std::size_t peak, std::ptrdiff_t step) {
  const double half = 0.5 * density[peak];
  const auto end = static_cast<std::ptrdiff_t>(density.size());
  for (auto i = static_cast<std::ptrdiff_t>(peak) + step; i >= 0 && i < end; i += step) {
    const auto outer = static_cast<std::size_t>(i);
    const auto inner = static_cast<std::size_t>(i - step);
    if (density[outer] <= half) {
      const double share = (density[inner] - half) / (density[inner] - density[outer]);
      const double crossing = frequency[inner] + share * (frequency[outer] - frequency[inner]);
      return std::abs(crossing - frequency[peak]);
    }
  }
  return std::nullopt;
}

}  // namespace

double dampingFromDecrement(double decrement) {
  return decrement / std::hypot(2.0 * std::numbers::pi, decrement);
}

double decrementFromDamping(double damping) {
  return 2.0 * std::numbers::pi * damping / std::sqrt(1.0 - damping * damping);
}

double logarithmicDecrement(double first, double last, double periods) {
  return std::log(first / last) / periods;
}

std::optional<double> halfPowerDamping(std::span<const double> frequency, std::span<const double> density,
                                       std::size_t peak) {
  if (!(frequency[peak] > 0.0) || !(density[peak] > 0.0)) {
    return std::nullopt;
  }
  const auto below = halfWidth(frequency, density, peak, -1);
  const auto above = halfWidth(frequency, density, peak, 1);
  if (!below && !above) {
    return std::nullopt;
  }
  const double width = below.value_or(above.value_or(0.0)) + above.value_or(below.value_or(0.0));
  return width / (2.0 * frequency[peak]);
}

}  // namespace fettle::maths
