#pragma once
#include <limits>
#include <optional>
#include <string>

namespace fettle {

inline constexpr double infiniteDegreesOfFreedom = std::numeric_limits<double>::infinity();

/// A value in one of the fixed units with what is known of its uncertainty (JCGM 100:2008).
struct Quantity {
  double value = 0;
  std::string unit;                       ///< unit key, see unit.h; "1" for a plain number
  std::optional<double> u;                ///< standard uncertainty in the same unit; none: not measured
  double dof = infiniteDegreesOfFreedom;  ///< effective degrees of freedom of u, not rounded
  std::optional<double> low, high;        ///< 95 % interval where it is not symmetric
};

/// U = t(0.975, dof)·u; none when the uncertainty is not known (JCGM 100:2008, G.3).
std::optional<double> expandedUncertainty(const Quantity& quantity);

/// Half width of the 95 % interval: U, or half of high - low when only an interval is known.
std::optional<double> halfInterval(const Quantity& quantity);

/// A value that is exact or whose uncertainty nobody measured.
Quantity plainQuantity(double value, std::string unit);

}  // namespace fettle
