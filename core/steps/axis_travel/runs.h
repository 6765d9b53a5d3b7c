#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/instrument.h"
#include "core/steps/axis_travel/inputs.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

inline constexpr double sameTarget = 1e-3;  // mm

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

/// The moves by axis, in the order x, y, z; targets within 1 µm are one. Refuses rows with a direction of
/// 0, and leaves out an axis whose moves all have one target, with its results withheld.
std::vector<AxisRuns> runsByAxis(StepResult& result, const std::vector<AxisMove>& moves);

}  // namespace fettle
