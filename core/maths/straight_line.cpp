#include "core/maths/straight_line.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/distributions.h"
#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

std::optional<std::string> reasonAgainst(std::span<const double> x, std::span<const double> y,
                                         std::span<const double> weights) {
  if (x.size() != y.size() || (!weights.empty() && weights.size() != x.size())) {
    return "the line got unequal numbers of x, y and weights";
  }
  if (x.size() < 2) {
    return "a straight line needs at least two points";
  }
  if (!allFinite(x) || !allFinite(y) || !allFinite(weights)) {
    return "the line got a value that is not a finite number";
  }
  if (std::any_of(weights.begin(), weights.end(), [](double weight) { return weight <= 0; })) {
    return "every weight of a line must be above zero";
  }
  const auto [least, greatest] = std::minmax_element(x.begin(), x.end());
  if (*least == *greatest) {
    return "all x are equal, so the line has no slope";
  }
  return std::nullopt;
}

/// Weighted mean with a second pass against rounding.
double weightedMean(std::span<const double> values, const Eigen::VectorXd& weights) {
  const Eigen::Map<const Eigen::VectorXd> column(values.data(), weights.size());
  const double first = column.dot(weights) / weights.sum();
  return first + (column.array() - first).matrix().dot(weights) / weights.sum();
}

/// Scatter of one reading as used by an inverse prediction.
struct Scatter {
  double standardDeviation;
  double degreesOfFreedom;
};

/// inverseReadings is 1/m for the mean of m new readings, 0 for a mean response known exactly.
Expected<InversePrediction> invert(const StraightLine& line, double y, double inverseReadings,
                                   Scatter scatter, double confidence) {
  InversePrediction result;
  result.value = line.meanX + (y - line.at(line.meanX)) / line.slope;
  if (line.slope == 0 || !std::isfinite(result.value)) {
    return failure("the line is level, so no x belongs to a given y");
  }
  const double s = scatter.standardDeviation;
  const double fromMean = result.value - line.meanX;
  const double variance = inverseReadings + 1 / line.sumOfWeights;
  result.standardError =
      s / std::abs(line.slope) * std::sqrt(variance + fromMean * fromMean / line.sumOfSquaresX);
  if (scatter.degreesOfFreedom <= 0) {
    return result;
  }
  const double t = studentQuantile((1 + confidence) / 2, scatter.degreesOfFreedom);
  const double ratio = t * s / line.slope;
  const double g = ratio * ratio / line.sumOfSquaresX;
  if (!(g < 1)) {
    return result;
  }
  const double half =
      std::abs(ratio) * std::sqrt(fromMean * fromMean / line.sumOfSquaresX + (1 - g) * variance);
  const Interval interval{result.value + (fromMean * g - half) / (1 - g),
                          result.value + (fromMean * g + half) / (1 - g)};
  if (std::isfinite(interval.low) && std::isfinite(interval.high)) {
    result.interval = interval;
  }
  return result;
}

}  // namespace

double StraightLine::slopeStandardError() const {
  return std::sqrt(covariance(1, 1));
}

double StraightLine::interceptStandardError() const {
  return std::sqrt(covariance(0, 0));
}

double StraightLine::standardErrorAt(double x) const {
  const double fromMean = x - meanX;
  return residualStandardDeviation * std::sqrt(1 / sumOfWeights + fromMean * fromMean / sumOfSquaresX);
}

double StraightLine::predictionStandardErrorAt(double x, double readings) const {
  return std::hypot(standardErrorAt(x), residualStandardDeviation / std::sqrt(readings));
}

double StraightLine::slopeProbability() const {
  if (degreesOfFreedom <= 0) {
    return 1;
  }
  const double error = slopeStandardError();
  if (error == 0) {
    return slope == 0 ? 1 : 0;
  }
  return std::min(1.0, 2 * studentUpper(std::abs(slope / error), degreesOfFreedom));
}

Expected<StraightLine> fitStraightLine(std::span<const double> x, std::span<const double> y,
                                       std::span<const double> weights) {
  if (const auto reason = reasonAgainst(x, y, weights)) {
    return failure(*reason);
  }
  const auto count = static_cast<Eigen::Index>(x.size());
  Eigen::VectorXd w = Eigen::VectorXd::Ones(count);
  if (!weights.empty()) {
    w = Eigen::Map<const Eigen::VectorXd>(weights.data(), count);
  }
  StraightLine line;
  line.sumOfWeights = w.sum();
  line.meanX = weightedMean(x, w);
  const double meanY = weightedMean(y, w);
  const Eigen::VectorXd dx = Eigen::Map<const Eigen::VectorXd>(x.data(), count).array() - line.meanX;
  const Eigen::VectorXd dy = Eigen::Map<const Eigen::VectorXd>(y.data(), count).array() - meanY;
  line.sumOfSquaresX = dx.cwiseProduct(dx).dot(w);
  line.slope = dx.cwiseProduct(dy).dot(w) / line.sumOfSquaresX;
  line.intercept = meanY - line.slope * line.meanX;
  const Eigen::VectorXd residuals = dy - line.slope * dx;
  line.residuals.assign(residuals.begin(), residuals.end());
  line.residualSumOfSquares = residuals.cwiseProduct(residuals).dot(w);
  line.degreesOfFreedom = static_cast<double>(count - 2);
  if (count > 2) {
    const double variance = line.residualSumOfSquares / line.degreesOfFreedom;
    line.residualStandardDeviation = std::sqrt(variance);
    line.covariance << variance * (1 / line.sumOfWeights + line.meanX * line.meanX / line.sumOfSquaresX),
        -variance * line.meanX / line.sumOfSquaresX, -variance * line.meanX / line.sumOfSquaresX,
        variance / line.sumOfSquaresX;
  }
  if (!std::isfinite(line.slope) || !std::isfinite(line.intercept) || !line.covariance.allFinite()) {
    return failure("the numbers are too large or too close together for a line");
  }
  return line;
}

Expected<InversePrediction> predictInverse(const StraightLine& line, double y, double confidence) {
  return invert(line, y, 0, {line.residualStandardDeviation, line.degreesOfFreedom}, confidence);
}

Expected<InversePrediction> predictInverse(const StraightLine& line, std::span<const double> readings,
                                           double confidence) {
  if (readings.empty()) {
    return failure("there is no reading to look up on the line");
  }
  const double centre = mean(readings);
  double squares = line.residualSumOfSquares;
  for (const double reading : readings) {
    squares += (reading - centre) * (reading - centre);
  }
  const auto count = static_cast<double>(readings.size());
  const double dof = line.degreesOfFreedom + count - 1;
  const Scatter pooled{dof > 0 ? std::sqrt(squares / dof) : 0, dof};
  return invert(line, centre, 1 / count, pooled, confidence);
}

}  // namespace fettle::maths
