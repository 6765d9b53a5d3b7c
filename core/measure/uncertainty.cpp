#include "core/measure/uncertainty.h"

#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include "core/maths/descriptive.h"

namespace fettle {
namespace {

std::vector<Contribution> scatterOfMean(std::span<const double> readings, const Instrument& instrument) {
  if (readings.empty()) {
    throw std::invalid_argument("a mean needs a reading");
  }
  const auto n = static_cast<double>(readings.size());
  std::vector<Contribution> parts{{instrument.r / std::sqrt(12 * n)}};
  if (readings.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(readings) / std::sqrt(n), n - 1});
  }
  return parts;
}

}  // namespace

Contribution combined(std::span<const Contribution> contributions) {
  double squares = 0;
  for (const auto& part : contributions) {
    squares += part.u * part.u;
  }
  if (squares == 0) {
    return {};
  }
  double denominator = 0;
  for (const auto& part : contributions) {
    // As shares of the whole, so that tiny uncertainties do not underflow in the fourth power.
    const double share = part.u * part.u / squares;
    denominator += std::isinf(part.dof) ? 0 : share * share / part.dof;
  }
  // Scatter that is only rounding of the arithmetic leaves a share of 1e-16 and less.
  constexpr double practicallyNone = 1e-12;
  return {std::sqrt(squares), denominator > practicallyNone ? 1 / denominator : infiniteDegreesOfFreedom};
}

Quantity combinedQuantity(double value, std::string unit, std::span<const Contribution> contributions) {
  const Contribution whole = combined(contributions);
  Quantity quantity;
  quantity.value = value;
  quantity.unit = std::move(unit);
  quantity.u = whole.u;
  quantity.dof = whole.dof;
  return quantity;
}

Quantity meanOfReadings(std::span<const double> readings, const Instrument& instrument, std::string unit) {
  auto parts = scatterOfMean(readings, instrument);
  const double mean = maths::mean(readings);
  parts.push_back({instrument.limitOfError(mean) / std::sqrt(3.0)});
  return combinedQuantity(mean, std::move(unit), parts);
}

Quantity meanOfReadingsWithoutCommonError(std::span<const double> readings, const Instrument& instrument,
                                          std::string unit) {
  return combinedQuantity(maths::mean(readings), std::move(unit), scatterOfMean(readings, instrument));
}

}  // namespace fettle
