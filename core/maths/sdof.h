#pragma once
#include <cstddef>
#include <optional>
#include <span>

namespace fettle::maths {

/// Damping ratio of a free decay from its logarithmic decrement δ ≥ 0 per period:
/// ζ = δ/√(4π² + δ²), exact (any textbook of vibration).
double dampingFromDecrement(double decrement);

/// The inverse, δ = 2πζ/√(1 − ζ²), 0 ≤ ζ < 1.
double decrementFromDamping(double damping);

/// δ = ln(x_0/x_n)/n from two amplitudes n periods apart, all above 0; a decay that grows gives δ < 0.
double logarithmicDecrement(double first, double last, double periods);

/// Half-power estimate ζ = (f₂ − f₁)/(2 f_peak), f₁ and f₂ where the density has fallen to half its peak
/// (linear interpolation between bins); a side that does not fall that far is taken as the mirror of the
/// other. Reads high, by 2 % at ζ = 0.1, and by the width of the window: a start for a fit, not a result.
/// Nothing when neither side falls to half or the peak is at 0 Hz.
std::optional<double> halfPowerDamping(std::span<const double> frequency, std::span<const double> density,
                                       std::size_t peak);

}  // namespace fettle::maths
