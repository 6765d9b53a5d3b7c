#pragma once
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace fettle {

/// A mode of vibration with the standard errors of its fit.
struct MeasuredMode {
  double frequency = 0;  ///< Hz, undamped natural frequency
  double damping = 0;
  double coefficient = 0;  ///< share of the mode in the motion, plus or minus
  double frequencyError = 0, dampingError = 0, coefficientError = 0;

  /// How much of the mode a print shows: displacement is acceleration over the square of the frequency.
  double weight() const { return std::abs(coefficient) / (frequency * frequency); }
  friend bool operator==(const MeasuredMode&, const MeasuredMode&) = default;
};

/// The modes seen at one place, the greatest weight first.
struct ModeSet {
  std::string position;
  std::vector<MeasuredMode> modes;
  double dof = 0;  ///< of the fit

  friend bool operator==(const ModeSet&, const ModeSet&) = default;

  void sortByWeight() {
    std::stable_sort(modes.begin(), modes.end(),
                     [](const MeasuredMode& a, const MeasuredMode& b) { return a.weight() > b.weight(); });
  }
};

}  // namespace fettle
