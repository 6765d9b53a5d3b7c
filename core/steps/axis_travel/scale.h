#pragma once
#include "core/steps/axis_travel/runs.h"
#include "core/steps/contract/step_context.h"

namespace fettle {

/// The straight line measured = a + b·target + c·direction through the moves of an axis.
struct TravelScale {
  Quantity ratio;  ///< b = measured / commanded
};

/// Least squares over all rows. u² of b = (standard error of the fit)² + r²/12·(XᵀX)⁻¹ + (e/√3/span)²:
/// the limit of error is common to all readings and enters once over the span. Moves from one side only
/// drop c. Refuses fewer rows than parameters, and targets that follow the direction, so that the two
/// cannot be told apart.
TravelScale scaleOf(const AxisRuns& runs, const Instrument& instrument);

/// Gives `<axis>.scale_error` = b − 1, `<axis>.travel_ratio` = b, `<axis>.steps_per_mm` = as found/b,
/// compares the ratio with the catalogue of parts and proposes the steps per mm: for a belt whose parts are
/// on the sheet their theoretical value, where that lies inside U of the measured one. On a delta these
/// figures are withheld.
void giveScale(StepResult& result, const AxisRuns& runs, const Instrument& instrument,
               const StepContext& context);

}  // namespace fettle
