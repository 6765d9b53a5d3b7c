#pragma once
#include <span>

#include "core/maths/expected.h"
#include "core/maths/interval.h"
#include "core/maths/modal_density.h"

namespace fettle::maths {

/// Where a fit begins to look for a mode: the frequency of a peak and, for example, its half-power damping.
struct ModeStart {
  double frequency = 0.0;  ///< Hz, above 0
  double damping = 0.0;    ///< above 0, below 1
};

struct ModalFit {
  ModalModel model;           ///< modes in the order of the starts
  ModalModel standardErrors;  ///< of the same parameters; 0 for a background that lies on its bound 0
  double residualSumOfSquares = 0.0;
  double degreesOfFreedom = 0.0;
};

/// What a fitted mode must hold to count: standard errors as shares of the values.
struct ModeLimits {
  double frequency = 0.05;
  double damping = 0.5;
};

/// Fits all modes together and coherently: least sum of ((S − model)/model)² over the bins within `range`,
/// Hz, by Levenberg–Marquardt, with A > 0, B ≥ 0, f_k > 0, ζ_k > 0. The coefficient of the first mode
/// starts plus, those of the others with both signs; the best of all combinations counts. Give the
/// strongest peak first. A bin far below the model weighs no more than a unit residual, so a hole in the
/// density does not rule the fit; A reads high by about one over the number of averages, which f, ζ and c
/// do not feel. `frequency` rising, `density` ≥ 0, same length. Errors: no start or more than 7; a start
/// out of its bounds; not more bins than parameters; a density that is negative or no number; no
/// convergence.
Expected<ModalFit> fitModes(std::span<const double> frequency, std::span<const double> density,
                            const Interval& range, std::span<const ModeStart> starts);

/// As fitModes; then, while a mode's standard errors exceed `limits` or its frequency has left the range,
/// the worst one is dropped and the others are fitted again (see determined_fit.h). The answer may hold no
/// mode.
Expected<ModalFit> fitDeterminedModes(std::span<const double> frequency, std::span<const double> density,
                                      const Interval& range, std::span<const ModeStart> starts,
                                      const ModeLimits& limits = {});

}  // namespace fettle::maths
