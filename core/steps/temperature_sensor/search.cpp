#include "core/steps/temperature_sensor/search.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double namedBelow = 2;  // °C
constexpr double timesBetter = 3;
constexpr double smallestFactor = 0.2, largestFactor = 5;
constexpr double infinity = std::numeric_limits<double>::infinity();

/// Sum of squares of shown − reference; infinite where the curve shows nothing.
double sumOfSquares(const LikelyCurve& curve, const std::vector<SensorPoint>& points,
                    const SensorCurve& configured) {
  double sum = 0;
  for (const auto& point : points) {
    const auto shown = curve.shownFor(configured, *point.indicated);
    const double error = shown ? *shown - *point.reference : infinity;
    sum += error * error;
  }
  return sum;
}

bool covers(const LikelyCurve& curve, const std::vector<SensorPoint>& points,
            const SensorCurve& configured) {
  return std::all_of(points.begin(), points.end(), [&](const SensorPoint& point) {
    const auto shown = curve.shownFor(configured, *point.indicated);
    return shown && *shown >= curve.curve.from && *shown <= curve.curve.to;
  });
}

/// Smallest value of a function between two ends within which it has one valley (golden section; Press et
/// al. 2007, Numerical Recipes, 10.2).
template <typename Function>
double valley(double low, double high, const Function& function) {
  const double golden = (std::sqrt(5.0) - 1) / 2;
  constexpr int steps = 60;  // narrows the interval by 3e-13
  for (int i = 0; i < steps; ++i) {
    const double left = high - golden * (high - low);
    const double right = low + golden * (high - low);
    if (function(left) < function(right)) {
      high = right;
    } else {
      low = left;
    }
  }
  return (low + high) / 2;
}

LikelyCurve withBestFactor(const std::vector<SensorPoint>& points, const SensorCurve& configured) {
  LikelyCurve bias{configured, 1, true, 0};
  const auto cost = [&](double logarithm) {
    bias.factor = std::exp(logarithm);
    return sumOfSquares(bias, points, configured);
  };
  constexpr int grid = 160;
  const double low = std::log(smallestFactor);
  const double step = (std::log(largestFactor) - low) / grid;
  int best = 0;
  for (int i = 1; i <= grid; ++i) {
    best = cost(low + i * step) < cost(low + best * step) ? i : best;
  }
  const double place =
      valley(low + std::max(best - 1, 0) * step, low + std::min(best + 1, grid) * step, cost);
  bias.factor = std::exp(place);
  const auto n = static_cast<double>(points.size());
  bias.rms = std::sqrt(sumOfSquares(bias, points, configured) / (n - 1));
  bias.curve.label = say(Text::tr("{0} with another bias resistor"), configured.label);
  return bias;
}

}  // namespace

std::optional<double> LikelyCurve::shownFor(const SensorCurve& configured, double indicated) const {
  return curve.temperature(factor * configured.resistance(indicated));
}

double configuredRms(const std::vector<SensorPoint>& points) {
  double sum = 0;
  for (const auto& point : points) {
    sum += point.deviation() * point.deviation();
  }
  return std::sqrt(sum / static_cast<double>(points.size()));
}

std::vector<LikelyCurve> likelyCurves(const std::vector<SensorPoint>& points,
                                      const SensorCurve& configured) {
  std::vector<LikelyCurve> likely;
  for (const auto& curve : sensorCurves()) {
    LikelyCurve candidate{curve, 1, false, 0};
    if (curve.key == configured.key || !covers(candidate, points, configured)) {
      continue;
    }
    candidate.rms =
        std::sqrt(sumOfSquares(candidate, points, configured) / static_cast<double>(points.size()));
    likely.push_back(std::move(candidate));
  }
  LikelyCurve bias = withBestFactor(points, configured);
  if (std::isfinite(bias.rms)) {
    likely.push_back(std::move(bias));
  }
  std::stable_sort(likely.begin(), likely.end(),
                   [](const LikelyCurve& a, const LikelyCurve& b) { return a.rms < b.rms; });
  return likely;
}

Quantity biasFactor(const LikelyCurve& bias, const std::vector<SensorPoint>& points,
                    const SensorCurve& configured, double limitOfError) {
  constexpr double step = 1e-5;
  LikelyCurve more = bias;
  more.factor *= 1 + step;
  double sum = 0, squares = 0;
  for (const auto& point : points) {
    const auto at = bias.shownFor(configured, *point.indicated);
    const auto beyond = more.shownFor(configured, *point.indicated);
    const double slope = at && beyond ? (*beyond - *at) / step : 0;
    sum += slope;
    squares += slope * slope;
  }
  if (squares == 0) {
    return plainQuantity(bias.factor, "1");
  }
  const Contribution parts[] = {
      {bias.factor * bias.rms / std::sqrt(squares), static_cast<double>(points.size() - 1)},
      {bias.factor * std::abs(sum) / squares * limitOfError / std::sqrt(3.0)}};
  return combinedQuantity(bias.factor, "1", parts);
}

bool maybeNamed(const LikelyCurve& curve, double rmsConfigured) {
  return rmsConfigured >= namedBelow && curve.rms < namedBelow && timesBetter * curve.rms < rmsConfigured;
}

}  // namespace fettle
