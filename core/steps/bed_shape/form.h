#pragma once
#include <optional>

#include "core/maths/plane.h"
#include "core/maths/quadratic_surface.h"
#include "core/steps/bed_shape/heights.h"

namespace fettle {

/// What is known of the probe: limits of its instrument and its scatter.
struct ProbeTrust {
  Instrument instrument;
  double scatter = 0;  ///< s of probe-repeatability; 0 while not known
  double ofOneHeight() const;
};

/// Surfaces fitted to the heights.
struct BedForm {
  maths::PlaneFit plane;
  std::optional<maths::QuadraticSurface> quadratic;  ///< none when the points do not determine one
};

/// Gives `range_raw`, then fits and gives `tilt_x` … `twist`. Throws Refusal for fewer than three points or
/// points on one line.
BedForm giveForm(StepResult& result, const BedHeights& heights, const ProbeTrust& probe);

}  // namespace fettle
