#pragma once
#include <cstddef>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/modes.h"

namespace fettle::maths {

/// a·exp(−ζωt)·sin(ω√(1−ζ²)·t + φ), ω = 2πf, t from the first sample.
struct DampedSine {
  double frequency = 0.0;  ///< undamped natural frequency f, Hz
  double damping = 0.0;    ///< ζ
  double amplitude = 0.0;  ///< a ≥ 0, at the first sample
  double phase = 0.0;      ///< φ, rad, −π … π
};

struct DampedSinesFit {
  double offset = 0.0;
  double offsetStandardError = 0.0;
  std::vector<DampedSine> sines;           ///< in the order of the starts
  std::vector<DampedSine> standardErrors;  ///< of the same parameters
  double residualSumOfSquares = 0.0;
  double degreesOfFreedom = 0.0;
};

/// Starts for a free decay: peaks of its power spectrum (no window) whose prominence is at least half their
/// height and whose height is at least 1 % of the highest, strongest first, at most `most`; damping from
/// the half-power width. `samples` follow the blow without a gap. Empty when there is no such peak.
std::vector<ModeStart> dampedSineStarts(std::span<const double> samples, double sampleRate,
                                        std::size_t most);

/// Least-squares fit of a sum of damped sines and a constant, by Levenberg–Marquardt with f > 0 and
/// 0 < ζ < 1. `time` (s, rising, gaps allowed) and `samples` have the same length.
/// Errors: lengths differ; no start, or one out of bounds; not more samples than parameters; a value that
/// is no number; no convergence.
Expected<DampedSinesFit> fitDampedSines(std::span<const double> time, std::span<const double> samples,
                                        std::span<const ModeStart> starts);

/// As fitDampedSines; then, while a sine's standard errors exceed `limits`, the worst one is dropped and
/// the others are fitted again. The answer may hold no sine.
Expected<DampedSinesFit> fitDeterminedDampedSines(std::span<const double> time,
                                                  std::span<const double> samples,
                                                  std::span<const ModeStart> starts,
                                                  const ModeLimits& limits = {});

}  // namespace fettle::maths
