#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"
#include "core/steps/heater_control/log.h"

namespace fettle {

/// The rows of a hold under one target, and where it settles.
struct HoldAnswer {
  double target = 0;                ///< °C
  std::optional<double> settledAt;  ///< s, of the log
  /// Temperature less target from the first row within 5 °C on, and its mean over the 5 s before.
  std::vector<double> time, error, meanTime, meanError;
};

/// Half width of the band in which a temperature counts as held, °C.
inline constexpr double holdBand = 1;

/// Judges how a target is reached and held. The rows are those of the longest stretch of one target in the
/// log, without targets all of them with the typed one. `overshoot_C` = greatest mean over 5 s, ends
/// included, less target; of a log that starts above its target only what follows the first row at or below
/// it. `settling_s` = from the first row to the first after the last reading outside ±1 °C. From there to
/// the end: `mean_error_C` with u = s/√n, `s_C`, `peak_to_peak_C`, `slope_C_per_min`, `greatest_fall_C`
/// (target less the lowest 5 s mean), `held_s` with its verdict: 120 s or more pass; a log that settles but
/// ends before, or that is shorter itself, is undecided (`log-too-short`); one that 600 s after first
/// coming within the band still does not hold, or ends outside, fails (`never-settles`). Throws Refusal for
/// rows that last under 5 s or a log whose targets are all zero or less. A target that the log does not say
/// is waited for.
std::optional<HoldAnswer> giveHoldTest(StepResult& result, const HeaterControlInputs& inputs,
                                       const std::string& heater, const HeaterLog& log,
                                       const StepContext& context);

/// What a hold test gives.
std::vector<ResultId> holdTestResults(const std::string& heater);

}  // namespace fettle
