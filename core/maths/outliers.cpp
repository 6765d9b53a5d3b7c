#include "core/maths/outliers.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/maths/descriptive.h"
#include "core/maths/distributions.h"

namespace fettle::maths {

Expected<std::vector<double>> modifiedZScores(std::span<const double> values, double smallestScale) {
  if (values.empty()) {
    return failure("there is no reading to score");
  }
  const double centre = median(values);
  const double scale = std::max(scaledMedianAbsoluteDeviation(values), smallestScale);
  if (!(scale > 0)) {
    return failure("at least half the readings are equal, so their scatter gives no scale for outliers");
  }
  std::vector<double> scores(values.begin(), values.end());
  for (double& score : scores) {
    score = (score - centre) / scale;
  }
  return scores;
}

double grubbsCriticalValue(std::size_t count, double alpha) {
  if (count < 3 || !(alpha > 0 && alpha < 1)) {
    throw std::invalid_argument("Grubbs' test needs three values or more and 0 < alpha < 1");
  }
  const auto n = static_cast<double>(count);
  const double t = studentQuantile(1 - alpha / (2 * n), n - 2);
  return (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
}

Expected<GrubbsTest> grubbsTest(std::span<const double> values, double fromResolution) {
  if (values.size() < 3) {
    return failure("Grubbs' test needs at least three readings");
  }
  const double centre = mean(values);
  const double s = std::hypot(sampleStandardDeviation(values), fromResolution);
  const auto farthest = std::max_element(values.begin(), values.end(), [centre](double a, double b) {
    return std::abs(a - centre) < std::abs(b - centre);
  });
  GrubbsTest test{};
  test.index = static_cast<std::size_t>(farthest - values.begin());
  // Equal readings may leave an s of rounding errors, so equality is asked of the readings themselves.
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  test.statistic = *least < *greatest && s > 0 ? std::abs(*farthest - centre) / s : 0;
  test.critical = grubbsCriticalValue(values.size());
  test.outlier = test.statistic > test.critical;
  return test;
}

std::vector<std::size_t> outlierIndices(std::span<const double> values, double fromResolution) {
  constexpr double largestScore = 3.5;
  std::vector<std::size_t> marked;
  if (values.size() < 3) {
    return marked;
  }
  if (const auto scores = modifiedZScores(values, fromResolution)) {
    for (std::size_t i = 0; i < scores->size(); ++i) {
      if (std::abs((*scores)[i]) > largestScore) {
        marked.push_back(i);
      }
    }
  }
  if (values.size() <= 30) {
    const auto test = grubbsTest(values, fromResolution);
    if (test->outlier && !std::binary_search(marked.begin(), marked.end(), test->index)) {
      marked.insert(std::upper_bound(marked.begin(), marked.end(), test->index), test->index);
    }
  }
  return marked;
}

}  // namespace fettle::maths
