#include "core/maths/dead_time_model.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/maths/curve_fit.h"
#include "core/maths/descriptive.h"
#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

using Eigen::Index;

/// The rows of a step test as the fit sees them.
struct Rows {
  std::span<const double> time, output;  ///< time counted from the record's own zero
  double stepTime, stepSize;

  double since(Index row) const { return time[static_cast<std::size_t>(row)] - stepTime; }
};

/// Residuals for (start, gain, time constant[, dead time]).
void fillResiduals(const Rows& rows, const Eigen::VectorXd& p, Eigen::VectorXd& residuals) {
  const double deadTime = p.size() > 3 ? p[3] : 0;
  for (Index i = 0; i < residuals.size(); ++i) {
    const double since = rows.since(i) - deadTime;
    const double change = since > 0 ? -std::expm1(-since / p[2]) : 0;
    residuals[i] = p[2] > 0
                       ? rows.output[static_cast<std::size_t>(i)] - p[0] - p[1] * rows.stepSize * change
                       : std::nan("");
  }
}

void fillJacobian(const Rows& rows, const Eigen::VectorXd& p, Eigen::MatrixXd& jacobian) {
  const double deadTime = p.size() > 3 ? p[3] : 0;
  jacobian.setZero();
  for (Index i = 0; i < jacobian.rows(); ++i) {
    jacobian(i, 0) = -1;
    const double since = rows.since(i) - deadTime;
    if (since > 0) {
      const double rest = std::exp(-since / p[2]);
      const double height = p[1] * rows.stepSize;
      jacobian(i, 1) = -rows.stepSize * (1 - rest);
      jacobian(i, 2) = height * rest * since / (p[2] * p[2]);
      if (p.size() > 3) {
        jacobian(i, 3) = height * rest / p[2];
      }
    }
  }
}

CurveFit fitFrom(const Rows& rows, const Eigen::VectorXd& start) {
  return fitCurve([&](const auto& p, auto& residuals) { fillResiduals(rows, p, residuals); },
                  static_cast<Index>(rows.time.size()), start,
                  [&](const auto& p, auto& jacobian) { fillJacobian(rows, p, jacobian); });
}

/// First time after the step at which the share of the change is reached; the end when it is not.
double timeAtShare(const Rows& rows, double from, double to, double share) {
  const double level = from + share * (to - from);
  for (std::size_t i = 0; i < rows.time.size(); ++i) {
    const bool reached = to > from ? rows.output[i] >= level : rows.output[i] <= level;
    if (rows.time[i] > rows.stepTime && reached) {
      return rows.time[i] - rows.stepTime;
    }
  }
  return rows.time.back() - rows.stepTime;
}

/// (start, gain, time constant, dead time) by two points.
Eigen::Vector4d roughStart(const Rows& rows, std::size_t before) {
  const double from = before > 0 ? mean(rows.output.first(before)) : rows.output.front();
  const std::size_t last = std::max<std::size_t>((rows.time.size() - before) / 20, 1);
  const double to = mean(rows.output.last(last));
  const DeadTimeModel rough = throughTwoPoints(
      (to - from) / rows.stepSize, timeAtShare(rows, from, to, 0.283), timeAtShare(rows, from, to, 0.632));
  const double span = rows.time.back() - rows.stepTime;
  return {from, rough.gain, std::max(rough.timeConstant, span / 100), std::max(rough.deadTime, span / 500)};
}

DeadTimeFit asFit(const CurveFit& fit) {
  DeadTimeFit result;
  const Index p = fit.parameters.size();
  result.start = fit.parameters[0];
  result.model = {fit.parameters[1], fit.parameters[2], p > 3 ? fit.parameters[3] : 0};
  result.covariance.topLeftCorner(p, p) = fit.covariance;
  result.deadTimeHeld = p == 3;
  result.residuals.assign(fit.residuals.begin(), fit.residuals.end());
  result.residualStandardDeviation = fit.residualStandardDeviation();
  result.degreesOfFreedom = fit.degreesOfFreedom;
  return result;
}

}  // namespace

double DeadTimeModel::unitStep(double time) const {
  return time > deadTime ? -gain * std::expm1(-(time - deadTime) / timeConstant) : 0;
}

DeadTimeModel throughTwoPoints(double gain, double timeAt28, double timeAt63) {
  const double timeConstant = 1.5 * (timeAt63 - timeAt28);
  return {gain, timeConstant, timeAt63 - timeConstant};
}

Expected<UltimatePoint> ultimatePointOf(const DeadTimeModel& model) {
  if (!(model.gain > 0) || !(model.timeConstant > 0) || !(model.deadTime > 0)) {
    return failure("without gain, lag and dead time there is no ultimate point");
  }
  // The phase falls steadily with w: halve the bracket until it is exact to rounding.
  double low = 0;
  double high = std::numbers::pi / model.deadTime;
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    const double phase = middle * model.deadTime + std::atan(middle * model.timeConstant);
    (phase < std::numbers::pi ? low : high) = middle;
  }
  return UltimatePoint{std::hypot(1.0, low * model.timeConstant) / model.gain, 2 * std::numbers::pi / low};
}

Expected<DeadTimeModel> modelWithUltimatePoint(double gain, const UltimatePoint& point) {
  const double loop = gain * point.gain;
  if (!(point.gain > 0) || !(point.period > 0) || !(loop > 1) || !std::isfinite(loop + point.period)) {
    return failure("no heater with a lag has this gain and this ultimate point");
  }
  const double frequency = 2 * std::numbers::pi / point.period;
  const double lag = std::sqrt(loop * loop - 1);
  return DeadTimeModel{gain, lag / frequency, (std::numbers::pi - std::atan(lag)) / frequency};
}

Expected<double> ultimateGainFromRelay(double halfStep, double amplitude, double halfHysteresis) {
  if (!(halfStep > 0) || !(halfHysteresis >= 0) || !(amplitude > halfHysteresis)) {
    return failure("the swing must be wider than the hysteresis and the relay must switch");
  }
  const double effective = std::sqrt(amplitude * amplitude - halfHysteresis * halfHysteresis);
  return 4 * halfStep / (std::numbers::pi * effective);
}

double DeadTimeFit::standardError(int parameter) const {
  return std::sqrt(std::max(covariance(parameter, parameter), 0.0));
}

Expected<DeadTimeFit> fitDeadTimeModel(std::span<const double> time, std::span<const double> output,
                                       double stepTime, double stepSize) {
  if (time.size() != output.size() || !allFinite(time) || !allFinite(output) || !std::isfinite(stepTime) ||
      !std::isfinite(stepSize) || stepSize == 0) {
    return failure("times and outputs must be finite and of equal count, and the step not zero");
  }
  const auto before = static_cast<std::size_t>(
      std::count_if(time.begin(), time.end(), [&](double t) { return t < stepTime; }));
  if (time.size() < before + 4) {
    return failure("fewer than four rows after the step");
  }
  const Rows rows{time, output, stepTime, stepSize};
  const Eigen::Vector4d rough = roughStart(rows, before);
  std::optional<CurveFit> best;
  for (const double share : {1.0, 0.5, 1.5}) {
    Eigen::VectorXd start = rough;
    start[3] *= share;
    CurveFit fit = fitFrom(rows, start);
    if (fit.converged && (!best || fit.residualSumOfSquares < best->residualSumOfSquares)) {
      best = std::move(fit);
    }
  }
  if (!best || best->parameters[3] < 0) {
    const CurveFit held = fitFrom(rows, rough.head(3));
    if (!held.converged) {
      return failure("the rows do not determine gain, time constant and dead time");
    }
    return asFit(held);
  }
  return asFit(*best);
}

}  // namespace fettle::maths
