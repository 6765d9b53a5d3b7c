#pragma once
#include "core/maths/shaper.h"

namespace fettle::maths {

/// t_n, s: what a shaper adds to every move.
double shaperDuration(const Shaper& shaper);

/// t̄ = Σ A_i t_i, s: how far a shaped motion lags behind.
double shaperMeanTime(const Shaper& shaper);

/// σ² = Σ A_i (t_i − t̄)², s².
double shaperVariance(const Shaper& shaper);

/// Σ A_i |t_i − t̄|, s.
double shaperMeanAbsoluteDeviation(const Shaper& shaper);

/// Deviation a·σ²/2 of a shaped from an unshaped path, its lag apart, while the acceleration is constant:
/// the shaped position is the mean of the positions at t − t_i, and the mean of a parabola exceeds the
/// parabola at the mean time by that much. mm for mm/s².
double pathDeviation(const Shaper& shaper, double acceleration);

/// Acceleration 2e/σ² at which the path deviation is `deviation` e > 0. A shaper of more than one impulse.
double accelerationLimit(const Shaper& shaper, double deviation);

/// Deviation ¼aσ² + ½v·Σ A_i|t_i − t̄| at a right-angled corner taken at v ≥ 0 on each axis. mm.
double cornerDeviation(const Shaper& shaper, double acceleration, double speed);

/// The speed v at which cornerDeviation is `deviation`, mm/s; 0 when the acceleration alone uses it up.
double cornerSpeedLimit(const Shaper& shaper, double acceleration, double deviation);

}  // namespace fettle::maths
