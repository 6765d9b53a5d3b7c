#include "core/maths/modes.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "core/maths/curve_fit.h"
#include "core/maths/determined_fit.h"
#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr std::size_t mostModes = 7;

/// The bins that take part.
struct Bins {
  VectorXd frequency;
  VectorXd density;
};

/// Parameters of the fit: ln A, then ln f, ln ζ, c of each mode, then B in units of the mean density unless
/// B is held at 0. Logarithms keep their values above 0.
struct Parameters {
  std::size_t modes = 0;
  bool background = true;
  double unit = 1.0;

  Index count() const { return 1 + 3 * static_cast<Index>(modes) + (background ? 1 : 0); }

  VectorXd pack(const ModalModel& model) const {
    VectorXd x(count());
    x[0] = std::log(model.amplitude);
    Index at = 1;
    for (const Mode& mode : model.modes) {
      x.segment<3>(at) << std::log(mode.frequency), std::log(mode.damping), mode.coefficient;
      at += 3;
    }
    if (background) {
      x[at] = model.background / unit;
    }
    return x;
  }

  ModalModel unpack(const VectorXd& x) const {
    ModalModel model{std::exp(x[0]), background ? x[count() - 1] * unit : 0.0, {}};
    for (std::size_t k = 0; k < modes; ++k) {
      const auto mode = x.segment<3>(1 + 3 * static_cast<Index>(k));
      model.modes.push_back({std::exp(mode[0]), std::exp(mode[1]), mode[2]});
    }
    return model;
  }

  /// Standard errors of the model's own parameters from those of the fit's.
  ModalModel unpackErrors(const VectorXd& errors, const ModalModel& model) const {
    ModalModel result{errors[0] * model.amplitude, background ? errors[count() - 1] * unit : 0.0, {}};
    Index at = 1;
    for (const Mode& mode : model.modes) {
      result.modes.push_back({errors[at] * mode.frequency, errors[at + 1] * mode.damping, errors[at + 2]});
      at += 3;
    }
    return result;
  }
};

/// (S − model)/model; a model that is not above 0 is no model.
void relativeResiduals(const Bins& bins, const ModalModel& model, VectorXd& residuals) {
  for (Index i = 0; i < bins.density.size(); ++i) {
    const double value = modalDensity(model, bins.frequency[i]);
    residuals[i] =
        value > 0.0 ? (bins.density[i] - value) / value : std::numeric_limits<double>::infinity();
  }
}

/// Derivatives of the residuals by the parameters of the fit.
void relativeJacobian(const Bins& bins, const Parameters& parameters, const ModalModel& model,
                      Eigen::MatrixXd& jacobian) {
  Eigen::RowVectorXd gradient(model.parameters());
  const Index modal = gradient.size() - 2;
  Eigen::RowVectorXd chain = Eigen::RowVectorXd::Ones(modal);
  for (Index k = 0; k < std::ssize(model.modes); ++k) {
    const Mode& mode = model.modes[static_cast<std::size_t>(k)];
    chain.segment<2>(3 * k) << mode.frequency, mode.damping;
  }
  for (Index i = 0; i < bins.density.size(); ++i) {
    const double value = modalDensity(model, bins.frequency[i], gradient);
    const double slope = -bins.density[i] / (value * value);
    jacobian(i, 0) = slope * gradient[0] * model.amplitude;
    jacobian.row(i).segment(1, modal) = slope * gradient.tail(modal).cwiseProduct(chain);
    if (parameters.background) {
      jacobian(i, 1 + modal) = slope * gradient[1] * parameters.unit;
    }
  }
}

CurveFit minimised(const Bins& bins, const Parameters& parameters, const ModalModel& start,
                   const CurveFitOptions& options) {
  const auto residuals = [&](const VectorXd& x, VectorXd& values) {
    relativeResiduals(bins, parameters.unpack(x), values);
  };
  const auto jacobian = [&](const VectorXd& x, Eigen::MatrixXd& values) {
    relativeJacobian(bins, parameters, parameters.unpack(x), values);
  };
  return fitCurve(residuals, bins.density.size(), parameters.pack(start), jacobian, options);
}

Expected<ModalFit> minimum(const Bins& bins, const Parameters& parameters, const ModalModel& start) {
  // What has not settled by then is a mode that the density does not show.
  const CurveFitOptions closely{300, 1e-10};
  const CurveFit fit = minimised(bins, parameters, start, closely);
  if (!fit.converged) {
    return failure("the modes cannot be fitted: " + fit.problem);
  }
  ModalModel model = parameters.unpack(fit.parameters);
  ModalModel errors = parameters.unpackErrors(fit.standardErrors, model);
  return ModalFit{std::move(model), std::move(errors), fit.residualSumOfSquares, fit.degreesOfFreedom};
}

/// Best fit from one start. A background that comes out negative is held at its bound.
Expected<ModalFit> fitFrom(const Bins& bins, const ModalModel& start) {
  const Parameters all{start.modes.size(), true, bins.density.mean()};
  auto free = minimum(bins, all, start);
  if (free && free->model.background >= 0.0) {
    return free;
  }
  const Parameters bounded{start.modes.size(), false, all.unit};
  return minimum(bins, bounded, free ? free->model : start);
}

double densityAt(const Bins& bins, double frequency) {
  const double* begin = bins.frequency.data();
  const Index next = std::lower_bound(begin, begin + bins.frequency.size(), frequency) - begin;
  return bins.density[std::min(next, bins.density.size() - 1)];
}

/// Coefficients that give each peak its height when A is `amplitude`; signs from the bits of `signs`.
ModalModel startModel(const Bins& bins, std::span<const ModeStart> starts, double amplitude,
                      std::size_t signs) {
  ModalModel model{amplitude, 0.0, {}};
  for (std::size_t k = 0; k < starts.size(); ++k) {
    const double height = std::max(densityAt(bins, starts[k].frequency) / amplitude, 0.01);
    const double size = 2.0 * starts[k].damping * std::sqrt(height);
    const bool minus = k > 0 && (signs >> (k - 1) & 1U) != 0;
    model.modes.push_back({starts[k].frequency, starts[k].damping, minus ? -size : size});
  }
  return model;
}

/// A model on the way to its minimum.
struct Candidate {
  ModalModel model;
  double sum = 0.0;
};

/// Every combination of signs, followed until it is clear which ones are worth finishing: wrong signs
/// creep.
std::vector<Candidate> candidates(const Bins& bins, std::span<const ModeStart> starts) {
  const CurveFitOptions roughly{60, 1e-5};
  const Parameters parameters{starts.size(), true, bins.density.mean()};
  // Towards low frequencies the modes leave the density of the base alone.
  const Index few = std::min<Index>(5, bins.density.size());
  const double low = std::max(bins.density.head(few).mean(), 1e-6 * parameters.unit);
  std::vector<Candidate> all;
  for (std::size_t signs = 0; signs < std::size_t{1} << (starts.size() - 1); ++signs) {
    const CurveFit fit = minimised(bins, parameters, startModel(bins, starts, low, signs), roughly);
    all.push_back({parameters.unpack(fit.parameters), fit.residualSumOfSquares});
  }
  return all;
}

Expected<ModalFit> bestOfAllSigns(const Bins& bins, std::span<const ModeStart> starts) {
  constexpr double worthFinishing = 1.2;  // times the least sum of squares
  const auto all = candidates(bins, starts);
  const auto bySum = [](const Candidate& a, const Candidate& b) { return a.sum < b.sum; };
  const double least = std::min_element(all.begin(), all.end(), bySum)->sum;
  Expected<ModalFit> best = failure("the modes cannot be fitted");
  for (const Candidate& candidate : all) {
    if (candidate.sum > worthFinishing * least) {
      continue;
    }
    auto fit = fitFrom(bins, candidate.model);
    if (!best || (fit && fit->residualSumOfSquares < best->residualSumOfSquares)) {
      best = std::move(fit);
    }
  }
  return best;
}

std::string complaint(std::span<const double> frequency, std::span<const double> density,
                      std::span<const ModeStart> starts) {
  if (frequency.size() != density.size()) {
    return "there must be as many frequencies as densities";
  }
  if (starts.empty() || starts.size() > mostModes) {
    return "the fit takes 1 to " + std::to_string(mostModes) + " modes, not " +
           std::to_string(starts.size());
  }
  if (!allFinite(density) ||
      std::any_of(density.begin(), density.end(), [](double s) { return s < 0.0; })) {
    return "a density is negative or no number";
  }
  const bool bounded = std::all_of(starts.begin(), starts.end(), [](const ModeStart& start) {
    return std::isfinite(start.frequency) && start.frequency > 0.0 && start.damping > 0.0 &&
           start.damping < 1.0;
  });
  return bounded ? "" : "a mode must start from a frequency above 0 Hz and a damping between 0 and 1";
}

Bins binsWithin(const Interval& range, std::span<const double> frequency, std::span<const double> density) {
  const auto first = std::lower_bound(frequency.begin(), frequency.end(), range.low) - frequency.begin();
  const auto last = std::upper_bound(frequency.begin(), frequency.end(), range.high) - frequency.begin();
  const Index size = std::max<Index>(0, last - first);
  return {Eigen::Map<const VectorXd>(frequency.data() + first, size),
          Eigen::Map<const VectorXd>(density.data() + first, size)};
}

}  // namespace

Expected<ModalFit> fitModes(std::span<const double> frequency, std::span<const double> density,
                            const Interval& range, std::span<const ModeStart> starts) {
  if (const std::string why = complaint(frequency, density, starts); !why.empty()) {
    return failure(why);
  }
  const Bins bins = binsWithin(range, frequency, density);
  const auto parameters = static_cast<Index>(2 + 3 * starts.size());
  if (bins.density.size() <= parameters) {
    return failure("the range holds " + std::to_string(bins.density.size()) +
                   " densities, the fit needs more than " + std::to_string(parameters));
  }
  if (!(bins.density.mean() > 0.0)) {
    return failure("the density is 0 all over the range");
  }
  return bestOfAllSigns(bins, starts);
}

Expected<ModalFit> fitDeterminedModes(std::span<const double> frequency, std::span<const double> density,
                                      const Interval& range, std::span<const ModeStart> starts,
                                      const ModeLimits& limits) {
  const auto fit = [&](const std::vector<ModeStart>& left) {
    return fitModes(frequency, density, range, left);
  };
  const auto excess = [&](const ModalFit& result, std::size_t k) {
    const Mode& mode = result.model.modes[k];
    const Mode& error = result.standardErrors.modes[k];
    if (mode.frequency < range.low || mode.frequency > range.high) {
      return std::numeric_limits<double>::infinity();
    }
    return std::max(error.frequency / (limits.frequency * mode.frequency),
                    error.damping / (limits.damping * mode.damping));
  };
  return determinedFit<ModalFit>(std::vector<ModeStart>(starts.begin(), starts.end()), fit, excess);
}

}  // namespace fettle::maths
