#include "core/maths/descriptive.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace fettle::maths {
namespace {

void requireAtLeast(std::size_t least, std::span<const double> values) {
  if (values.size() < least) {
    throw std::invalid_argument("too few values for this statistic");
  }
}

}  // namespace

double mean(std::span<const double> values) {
  requireAtLeast(1, values);
  const auto count = static_cast<double>(values.size());
  double sum = 0;
  for (const double value : values) {
    sum += value;
  }
  const double first = sum / count;
  double correction = 0;
  for (const double value : values) {
    correction += value - first;
  }
  return first + correction / count;
}

double sampleStandardDeviation(std::span<const double> values) {
  requireAtLeast(2, values);
  const auto count = static_cast<double>(values.size());
  const double centre = mean(values);
  double squares = 0;
  double sum = 0;
  for (const double value : values) {
    squares += (value - centre) * (value - centre);
    sum += value - centre;
  }
  return std::sqrt(std::max(0.0, squares - sum * sum / count) / (count - 1));
}

double median(std::span<const double> values) {
  return quantile(values, 0.5);
}

double scaledMedianAbsoluteDeviation(std::span<const double> values) {
  const double centre = median(values);
  std::vector<double> deviations(values.begin(), values.end());
  for (double& deviation : deviations) {
    deviation = std::abs(deviation - centre);
  }
  return 1.4826 * median(deviations);
}

double quantile(std::span<const double> values, double probability) {
  requireAtLeast(1, values);
  if (!(probability >= 0 && probability <= 1)) {
    throw std::invalid_argument("a quantile needs a probability from 0 to 1");
  }
  std::vector<double> sorted(values.begin(), values.end());
  const double rank = probability * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::ptrdiff_t>(rank);
  const auto lower = sorted.begin() + below;
  std::nth_element(sorted.begin(), lower, sorted.end());
  const double fraction = rank - static_cast<double>(below);
  if (fraction == 0) {
    return *lower;
  }
  const double upper = *std::min_element(lower + 1, sorted.end());
  return *lower + fraction * (upper - *lower);
}

std::optional<double> lag1Autocorrelation(std::span<const double> values) {
  requireAtLeast(2, values);
  const double centre = mean(values);
  double products = 0;
  double squares = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double deviation = values[i] - centre;
    squares += deviation * deviation;
    products += i + 1 < values.size() ? deviation * (values[i + 1] - centre) : 0;
  }
  if (squares == 0) {
    return std::nullopt;
  }
  return products / squares;
}

}  // namespace fettle::maths
