#pragma once
#include <span>
#include <string>

#include "core/measure/instrument.h"
#include "core/measure/quantity.h"

namespace fettle {

/// One part of a combined standard uncertainty, sensitivity included, in the unit of the result.
struct Contribution {
  double u = 0;
  double dof = infiniteDegreesOfFreedom;
};

/// Root sum of squares and Welch–Satterthwaite degrees of freedom (JCGM 100:2008, 5.1.2 and G.4.1, not
/// rounded). No contribution: u = 0 with infinite degrees of freedom.
Contribution combined(std::span<const Contribution> contributions);

/// A value with the combined uncertainty of its contributions.
Quantity combinedQuantity(double value, std::string unit, std::span<const Contribution> contributions);

/// Mean of one reading or more with one instrument: u² = s²/n + r²/(12 n) + e²/3; the limit of error is
/// common to the readings and not divided by n. One reading alone has u² = r²/12 + e²/3 and infinite
/// degrees of freedom.
/// Throws std::invalid_argument without readings: the caller counts them.
Quantity meanOfReadings(std::span<const double> readings, const Instrument& instrument, std::string unit);

/// The same without the limit of error, for differences in which it cancels.
Quantity meanOfReadingsWithoutCommonError(std::span<const double> readings, const Instrument& instrument,
                                          std::string unit);

}  // namespace fettle
