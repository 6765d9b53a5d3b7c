#pragma once
#include <cstddef>
#include <optional>

#include "core/maths/shaper.h"

namespace fettle::maths {

/// Vibration left after the last impulse as a share of that of one impulse at once,
///   V(f, ζ) = exp(−ζωt_n)·√(C² + S²),  C, S = Σ A_i exp(ζωt_i)·cos, sin(ω√(1−ζ²)·t_i),  ω = 2πf
/// (Singer and Seering 1990). `frequency` ≥ 0 Hz, 0 ≤ `damping` < 1.
double residualVibration(const Shaper& shaper, double frequency, double damping);

/// Largest V of `count` ≥ 2 equally spaced frequencies from `low` to `high`, both included.
double largestResidual(const Shaper& shaper, double low, double high, double damping, std::size_t count);

/// The unbroken band of frequencies about the shaper's own in which V stays within a limit.
struct InsensitiveBand {
  double low = 0.0;
  std::optional<double> high;  ///< none: within the limit up to five times the shaper's frequency at least
};

/// The band about shaper.frequency where V(f, ζ) ≤ `limit`, 0 < limit < 1; edges, where V equals the limit,
/// to 1e-9 of the frequency. A hump that exceeds the limit by less than 2.5 % of it does not break the
/// band: the damped one-hump shaper meets V at its own frequency and by its constraints exceeds it beside,
/// by 0.06 % at ζ = 0.1, 0.35 % at 0.2, 2.3 % at 0.5. Nothing when V exceeds the limit at the shaper's
/// frequency. Steps of a thousandth of the frequency: a narrower hump would be missed; the shapers of
/// shaper.h have none.
std::optional<InsensitiveBand> insensitiveBand(const Shaper& shaper, double damping, double limit);

/// Width of the band over the shaper's frequency (Singhose, Seering and Singer 1994); nothing when the band
/// is missing or open.
std::optional<double> insensitivity(const Shaper& shaper, double damping, double limit);

}  // namespace fettle::maths
