#pragma once
#include <optional>

#include "core/steps/axis_travel/runs.h"

namespace fettle {

/// Two ends of what ISO 230-2 calls a range, mm.
struct Extent {
  double low = 0, high = 0;
};
/// max(x̄ + factor·s) and min(x̄ − factor·s) over all approaches: E with 0, A with 2.
Extent extentOfMeans(const AxisRuns& runs, double factor);
/// Of (x̄_i↑ + x̄_i↓)/2: M; none where no target was reached from both sides.
std::optional<Extent> extentOfMiddles(const AxisRuns& runs);

/// Gives `<axis>.reversal`, `reversal_mean`, `repeatability`, `systematic_deviation`, `mean_deviation`,
/// `accuracy` after ISO 230-2:2014, clause 3, for any number of runs n_i:
///   B_i = x̄_i↑ − x̄_i↓, reversal = max|B_i|; R = max over i of max(2s_i↑ + 2s_i↓ + |B_i|, 4s_i↑, 4s_i↓);
///   E = range of all x̄_i↑, x̄_i↓; M = range of (x̄_i↑ + x̄_i↓)/2; A = max(x̄ + 2s) − min(x̄ − 2s).
/// Targets reached from one side only count in E, A and in R by 4s. Uncertainty by partial derivatives at
/// the targets that make the extreme, u(s) as in spreadUncertainty; the limit of error enters once where
/// two targets are compared and cancels at one.
void giveAccuracy(StepResult& result, const AxisRuns& runs, const Instrument& instrument);

}  // namespace fettle
