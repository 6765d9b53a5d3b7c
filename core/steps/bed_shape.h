#pragma once
#include "core/steps/bed_shape/inputs.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// Tilt, flatness and form of the bed from probed heights, and what is wrong with them.
///
/// Least-squares plane (see maths/plane.h): `tilt_x`, `tilt_y` in mm per 100 mm, plus = rises toward plus;
/// of its residuals `flatness_ls` = max − min and `rms` = sqrt(Σ/n). `flatness_mz` is the minimum zone
/// (ISO 12781-1, see maths/minimum_zone.h). `bow_x`, `bow_y`, `twist` are coefficients of a quadratic in
/// u, v from −1 to 1 over the points (see maths/quadratic_surface.h). Faults: see bed_shape/faults.h;
/// density: see bed_shape/density.h. A grid counts before points. Blank cells of a grid are left out; what
/// is left is computed as points, and faults are looked for only where these fill a grid again.
///
/// Uncertainty is that of the probe, not of the bed's own form: each height has u_n² = r²/12 + s², s of
/// probe-repeatability, 0 while that is not known. It goes through the least squares by the unscaled
/// covariance. The limit of error is common to all heights: it cancels in differences of heights, and so
/// in range, flatness, bow and twist; in a tilt it enters once as e/√3 over the span. Range and flatness
/// have √2·u_n: two heights decide the first two; the four of a minimum zone weigh at most that much.
/// Refused: fewer than three points, points on one line. Of one place with two heights neither counts.
StepResult evaluate(const BedShapeInputs& inputs, const StepContext& context);

Step bedShapeStep();

}  // namespace fettle
