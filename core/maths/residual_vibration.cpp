#include "core/maths/residual_vibration.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <complex>
#include <cstdint>
#include <numbers>
#include <vector>

namespace fettle::maths {
namespace {

using Complex = std::complex<double>;

/// Of the limit. The one-hump shaper holds V at its own frequency, its summit lies beside and is higher.
constexpr double negligibleExcess = 0.025;

/// d/dω of the exponent of one impulse, with exp(−ζωt_n) drawn inside so that nothing overflows.
Complex exponentRate(const Shaper& shaper, const Impulse& impulse, double damping) {
  return {damping * (impulse.time - shaper.impulses.back().time),
          std::sqrt(1.0 - damping * damping) * impulse.time};
}

/// Walks from the shaper's frequency by `step` Hz until V is clearly over the limit; the last crossing
/// before that is the edge. Nothing when the walk ends first.
std::optional<double> bandEdge(const Shaper& shaper, double damping, double limit, double step,
                               double end) {
  const auto excess = [&](double frequency) {
    return residualVibration(shaper, frequency, damping) - limit;
  };
  double inside = shaper.frequency;
  bool over = false;
  for (double frequency = shaper.frequency + step; (end - frequency) / step > 0.0; frequency += step) {
    const double value = excess(frequency);
    if (value > negligibleExcess * limit) {
      over = true;
      break;
    }
    if (value <= 0.0) {
      inside = frequency;
    }
  }
  if (!over) {
    return std::nullopt;
  }
  const double outside = inside + step;
  if (excess(inside) >= 0.0) {  // on the limit but for rounding
    return inside;
  }
  std::uintmax_t iterations = 100;
  const auto bracket =
      boost::math::tools::toms748_solve(excess, std::min(inside, outside), std::max(inside, outside),
                                        boost::math::tools::eps_tolerance<double>(40), iterations);
  return 0.5 * (bracket.first + bracket.second);
}

}  // namespace

double residualVibration(const Shaper& shaper, double frequency, double damping) {
  const double omega = 2.0 * std::numbers::pi * frequency;
  Complex sum = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    sum += impulse.amplitude * std::exp(omega * exponentRate(shaper, impulse, damping));
  }
  return std::abs(sum);
}

double largestResidual(const Shaper& shaper, double low, double high, double damping, std::size_t count) {
  // From one frequency to the next every impulse turns by the same factor: two exponentials each are
  // enough.
  const double first = 2.0 * std::numbers::pi * low;
  const double step = 2.0 * std::numbers::pi * (high - low) / static_cast<double>(count - 1);
  struct Turning {
    Complex value;
    Complex factor;
  };
  std::vector<Turning> terms;
  terms.reserve(shaper.impulses.size());
  for (const Impulse& impulse : shaper.impulses) {
    const Complex rate = exponentRate(shaper, impulse, damping);
    terms.push_back({impulse.amplitude * std::exp(first * rate), std::exp(step * rate)});
  }
  double largest = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    Complex sum = 0.0;
    for (Turning& term : terms) {
      sum += term.value;
      term.value *= term.factor;
    }
    largest = std::max(largest, std::norm(sum));
  }
  return std::sqrt(largest);
}

std::optional<InsensitiveBand> insensitiveBand(const Shaper& shaper, double damping, double limit) {
  constexpr double rounding = 1e-9;  // of the limit
  const double step = 1e-3 * shaper.frequency;
  if (residualVibration(shaper, shaper.frequency, damping) > limit * (1.0 + rounding)) {
    return std::nullopt;
  }
  // V is 1 at 0 Hz, so the walk down always ends before.
  const double low = bandEdge(shaper, damping, limit, -step, 0.0).value_or(0.0);
  return InsensitiveBand{low, bandEdge(shaper, damping, limit, step, 5.0 * shaper.frequency)};
}

std::optional<double> insensitivity(const Shaper& shaper, double damping, double limit) {
  const auto band = insensitiveBand(shaper, damping, limit);
  if (!band || !band->high) {
    return std::nullopt;
  }
  return (*band->high - band->low) / shaper.frequency;
}

}  // namespace fettle::maths
