#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/quantity.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/resonance/inputs.h"
#include "core/steps/resonance/measured_mode.h"

namespace fettle {

/// The ripples of one axis, all rows together.
struct Ripple {
  std::string axis;
  Quantity frequency;               ///< Hz
  std::optional<Quantity> damping;  ///< by the logarithmic decrement, where amplitudes were read
  double amplitude = 1;             ///< mm, of the first crest; 1 where none was read
  std::vector<double> frequencies;  ///< Hz, row by row
  std::vector<std::size_t> rows;    ///< as the user counts them
  double fastest = 0;               ///< mm/s
  double resolution = 0;            ///< Hz, of one row, by the instrument

  /// The ripple as a mode, for an axis without a usable capture; `designDamping` where none was measured.
  ModeSet asModes(double designDamping) const;
};

/// The rows of each axis, in the order in which the axes appear.
std::vector<std::vector<RippleRow>> rowsByAxis(const std::vector<RippleRow>& rows);

/// Frequency f = v·N/L of each row, u(N) = 0.25 whole intervals, L with its instrument; rows of one axis
/// are averaged: u² = s²/n + u(rows)²/n + (common limit of error)²/3. Damping from the slope of ln
/// amplitude over the crests. Throws Refusal for amplitudes that are no positive numbers or do not fall.
Ripple rippleOf(const std::vector<RippleRow>& rows, const Instrument& distance);

/// Length behind the corner in which an axis still gathers speed, v²/(2a), mm: no crest counts there.
double lengthToSkip(double speed, double acceleration);

}  // namespace fettle
