#include "core/maths/damped_sines.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include <string>

#include "core/maths/curve_fit.h"
#include "core/maths/determined_fit.h"
#include "core/maths/finite.h"
#include "core/maths/fourier.h"
#include "core/maths/peaks.h"
#include "core/maths/sdof.h"

namespace fettle::maths {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr double smallestStartDamping = 1e-3;

// Parameters of the fit: the offset, then ln f, ln ζ, p, q of each sine, p·cosine + q·sine. Amplitude and
// phase are linear in this form, so they have no bad start; logarithms keep f and ζ above 0.

/// Cosine and sine of one damped oscillation at one time.
struct Terms {
  double cosine = 0.0;
  double sine = 0.0;
};

Terms termsAt(double frequency, double damping, double time) {
  const double angle = 2.0 * std::numbers::pi * frequency * time;
  const double decay = std::exp(-damping * angle);
  const double phase = std::sqrt(1.0 - damping * damping) * angle;
  return {decay * std::cos(phase), decay * std::sin(phase)};
}

void sineResiduals(const VectorXd& time, const VectorXd& samples, const VectorXd& x, VectorXd& residuals) {
  residuals = x[0] - samples.array();
  for (Index at = 1; at < x.size(); at += 4) {
    const double frequency = std::exp(x[at]);
    const double damping = std::exp(x[at + 1]);
    if (!(damping < 1.0)) {  // no oscillation
      residuals.setConstant(std::numeric_limits<double>::infinity());
      return;
    }
    for (Index i = 0; i < time.size(); ++i) {
      const Terms terms = termsAt(frequency, damping, time[i]);
      residuals[i] += x[at + 2] * terms.cosine + x[at + 3] * terms.sine;
    }
  }
}

void sineJacobian(const VectorXd& time, const VectorXd& x, Eigen::MatrixXd& jacobian) {
  jacobian.col(0).setOnes();
  for (Index at = 1; at < x.size(); at += 4) {
    const double frequency = std::exp(x[at]);
    const double damping = std::exp(x[at + 1]);
    const double root = std::sqrt(1.0 - damping * damping);
    for (Index i = 0; i < time.size(); ++i) {
      const double angle = 2.0 * std::numbers::pi * frequency * time[i];
      const Terms terms = termsAt(frequency, damping, time[i]);
      const double value = x[at + 2] * terms.cosine + x[at + 3] * terms.sine;
      const double turned = x[at + 3] * terms.cosine - x[at + 2] * terms.sine;  // derivative by the phase
      jacobian(i, at) = angle * (root * turned - damping * value);
      jacobian(i, at + 1) = -damping * angle * (value + damping / root * turned);
      jacobian(i, at + 2) = terms.cosine;
      jacobian(i, at + 3) = terms.sine;
    }
  }
}

/// For given frequencies and dampings the offset, p and q are a linear least-squares problem.
VectorXd startParameters(const VectorXd& time, const VectorXd& samples, std::span<const ModeStart> starts) {
  const auto sines = static_cast<Index>(starts.size());
  Eigen::MatrixXd design(time.size(), 1 + 2 * sines);
  design.col(0).setOnes();
  for (Index k = 0; k < sines; ++k) {
    const ModeStart& start = starts[static_cast<std::size_t>(k)];
    for (Index i = 0; i < time.size(); ++i) {
      const Terms terms = termsAt(start.frequency, start.damping, time[i]);
      design(i, 1 + 2 * k) = terms.cosine;
      design(i, 2 + 2 * k) = terms.sine;
    }
  }
  const VectorXd linear = design.colPivHouseholderQr().solve(samples);
  VectorXd x(1 + 4 * sines);
  x[0] = linear[0];
  for (Index k = 0; k < sines; ++k) {
    const ModeStart& start = starts[static_cast<std::size_t>(k)];
    x.segment<4>(1 + 4 * k) << std::log(start.frequency), std::log(start.damping), linear[1 + 2 * k],
        linear[2 + 2 * k];
  }
  return x;
}

/// Natural parameters and their standard errors from the solution.
DampedSinesFit unpack(const VectorXd& x, const Eigen::MatrixXd& covariance) {
  DampedSinesFit fit;
  fit.offset = x[0];
  fit.offsetStandardError = std::sqrt(covariance(0, 0));
  for (Index at = 1; at < x.size(); at += 4) {
    const double frequency = std::exp(x[at]);
    const double damping = std::exp(x[at + 1]);
    const Eigen::Vector2d linear = x.segment<2>(at + 2);
    const double amplitude = linear.norm();
    // p = a·sin φ, q = a·cos φ
    fit.sines.push_back({frequency, damping, amplitude, std::atan2(linear[0], linear[1])});
    const Eigen::Matrix2d block = covariance.block<2, 2>(at + 2, at + 2);
    const Eigen::Vector2d along = linear / std::max(amplitude, 1e-300);
    const Eigen::Vector2d across(along[1], -along[0]);
    fit.standardErrors.push_back({frequency * std::sqrt(covariance(at, at)),
                                  damping * std::sqrt(covariance(at + 1, at + 1)),
                                  std::sqrt(along.dot(block * along)),
                                  std::sqrt(across.dot(block * across)) / std::max(amplitude, 1e-300)});
  }
  return fit;
}

std::string complaint(std::span<const double> time, std::span<const double> samples,
                      std::span<const ModeStart> starts) {
  if (time.size() != samples.size()) {
    return "there must be as many times as samples";
  }
  if (!allFinite(time) || !allFinite(samples)) {
    return "the samples hold a value that is no number";
  }
  if (starts.empty()) {
    return "the fit needs the frequency of at least one sine";
  }
  if (samples.size() <= 1 + 4 * starts.size()) {
    return std::to_string(starts.size()) + " damped sines need more than " +
           std::to_string(1 + 4 * starts.size()) + " samples";
  }
  const bool bounded = std::all_of(starts.begin(), starts.end(), [](const ModeStart& start) {
    return std::isfinite(start.frequency) && start.frequency > 0.0 && start.damping > 0.0 &&
           start.damping < 1.0;
  });
  return bounded ? "" : "a sine must start from a frequency above 0 Hz and a damping between 0 and 1";
}

}  // namespace

std::vector<ModeStart> dampedSineStarts(std::span<const double> samples, double sampleRate,
                                        std::size_t most) {
  constexpr double weakest = 0.01;
  if (samples.size() < 8) {
    return {};
  }
  RealFourier fourier(samples.size());
  const auto length = static_cast<double>(samples.size());
  const double mean = Eigen::Map<const VectorXd>(samples.data(), std::ssize(samples)).mean();
  std::transform(samples.begin(), samples.end(), fourier.input().begin(),
                 [mean](double sample) { return sample - mean; });
  std::vector<double> frequency;
  std::vector<double> power;
  for (const std::complex<double>& value : fourier.transform()) {
    frequency.push_back(static_cast<double>(power.size()) * sampleRate / length);
    power.push_back(std::norm(value));
  }
  const double highest = *std::max_element(power.begin(), power.end());
  std::vector<Peak> peaks = findPeaks(power);
  std::erase_if(peaks, [&](const Peak& peak) {
    return peak.prominence < 0.5 * peak.height || peak.height < weakest * highest;
  });
  std::stable_sort(peaks.begin(), peaks.end(),
                   [](const Peak& a, const Peak& b) { return a.height > b.height; });
  std::vector<ModeStart> starts;
  for (const Peak& peak : peaks) {
    const auto damping = halfPowerDamping(frequency, power, peak.index);
    if (damping && starts.size() < most) {
      starts.push_back({frequency[peak.index], std::clamp(*damping, smallestStartDamping, 0.5)});
    }
  }
  return starts;
}

Expected<DampedSinesFit> fitDampedSines(std::span<const double> time, std::span<const double> samples,
                                        std::span<const ModeStart> starts) {
  if (const std::string why = complaint(time, samples, starts); !why.empty()) {
    return failure(why);
  }
  const VectorXd t = Eigen::Map<const VectorXd>(time.data(), std::ssize(time)).array() - time.front();
  const VectorXd y = Eigen::Map<const VectorXd>(samples.data(), std::ssize(samples));
  const auto residuals = [&](const VectorXd& x, VectorXd& values) { sineResiduals(t, y, x, values); };
  const auto jacobian = [&](const VectorXd& x, Eigen::MatrixXd& values) { sineJacobian(t, x, values); };
  const CurveFit solution = fitCurve(residuals, y.size(), startParameters(t, y, starts), jacobian);
  if (!solution.converged) {
    return failure("the damped sines cannot be fitted: " + solution.problem);
  }
  DampedSinesFit fit = unpack(solution.parameters, solution.covariance);
  fit.residualSumOfSquares = solution.residualSumOfSquares;
  fit.degreesOfFreedom = solution.degreesOfFreedom;
  return fit;
}

Expected<DampedSinesFit> fitDeterminedDampedSines(std::span<const double> time,
                                                  std::span<const double> samples,
                                                  std::span<const ModeStart> starts,
                                                  const ModeLimits& limits) {
  const auto fit = [&](const std::vector<ModeStart>& left) { return fitDampedSines(time, samples, left); };
  const auto excess = [&](const DampedSinesFit& result, std::size_t k) {
    const DampedSine& sine = result.sines[k];
    const DampedSine& error = result.standardErrors[k];
    return std::max(error.frequency / (limits.frequency * sine.frequency),
                    error.damping / (limits.damping * sine.damping));
  };
  return determinedFit<DampedSinesFit>(std::vector<ModeStart>(starts.begin(), starts.end()), fit, excess);
}

}  // namespace fettle::maths
