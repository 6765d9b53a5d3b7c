#pragma once
#include <algorithm>
#include <cmath>
#include <span>

namespace fettle::maths {

/// True when no value is infinite or not a number.
inline bool allFinite(std::span<const double> values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

}  // namespace fettle::maths
