#include "core/measure/quantity.h"

#include <utility>

#include "core/maths/distributions.h"

namespace fettle {

std::optional<double> expandedUncertainty(const Quantity& quantity) {
  if (!quantity.u) {
    return std::nullopt;
  }
  return *quantity.u == 0 ? 0.0 : maths::studentQuantile(0.975, quantity.dof) * *quantity.u;
}

std::optional<double> halfInterval(const Quantity& quantity) {
  if (quantity.u) {
    return expandedUncertainty(quantity);
  }
  if (quantity.low && quantity.high) {
    return (*quantity.high - *quantity.low) / 2;
  }
  return std::nullopt;
}

Quantity plainQuantity(double value, std::string unit) {
  Quantity quantity;
  quantity.value = value;
  quantity.unit = std::move(unit);
  return quantity;
}

}  // namespace fettle
