#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/instrument.h"
#include "core/steps/axis_travel.h"

namespace fettle {

/// Runs to one target from one side.
struct ApproachRuns {
  std::vector<double> deviations;  ///< measured less target, mm
  std::vector<std::size_t> rows;
  bool any() const { return !deviations.empty(); }
  double mean() const;                             ///< of one run or more
  std::optional<double> spread() const;            ///< standard deviation, n − 1; none under two runs
  Quantity meanQuantity(const Instrument&) const;  ///< without the common error of the instrument
};

struct TargetRuns {
  double target = 0;
  ApproachRuns up, down;
  bool bothSides() const { return up.any() && down.any(); }
  /// x̄↑ − x̄↓; the limit of error is common to both and cancels.
  Quantity reversal(const Instrument& instrument) const;
};

/// u(s) = s/√(2(n − 1)) of a standard deviation of n readings (JCGM 100:2008, E.4.3), s not below what the
/// resolution hides, r/√12: readings that are all alike do not make s exact.
double spreadUncertainty(double spread, std::size_t count, const Instrument& instrument);

/// All moves of one axis that count.
struct AxisRuns {
  std::string axis;
  std::vector<AxisMove> moves;
  std::vector<TargetRuns> targets;  ///< rising
  /// Fewest runs to any target from any side that was used.
  std::size_t fewestRuns() const;
};

/// The moves by axis, in the order x, y, z; targets within 1 µm are one. Refuses a direction of 0 and an
/// axis whose moves all have one target.
std::vector<AxisRuns> runsByAxis(const std::vector<AxisMove>& moves);

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
