#pragma once

#include "core/maths/expected.h"
#include "core/maths/shaper_shape.h"

namespace fettle::maths {

/// Extra-insensitive shaper of 1, 2 or 3 humps for a damped mode, solved from its constraints:
/// the amplitudes sum to 1 and the residual vibration V(f), with r = frequency over design frequency, holds
///   one hump:    V(1) = V; one zero below and one above 1; the last impulse is at one damped period;
///   two humps:   zero at 1 and one more zero on either side; both humps between them have the height V;
///   three humps: V(1) = V with slope 0; two zeros on either side; the two outer humps have the height V.
/// (Singhose, Seering and Singer 1996; Singhose, Porter, Tuttle and Singer 1997). There are as many
/// equations as unknowns; their solution is followed from the closed form at ζ = 0. Humps come out equal
/// to V within 1e-10. Damping moves the upper zeros away; for V = 0.05 the outermost reaches infinity at
/// ζ = 0.45 with two humps and at 0.32 with three.
/// Errors: humps not 1 to 3; `damping` outside 0 … 0.5; `tolerance` outside 0.005 … 0.2; no solution with
/// amplitudes above 0 for this damping.
Expected<ShaperShape> extraInsensitive(int humps, double damping, double tolerance);

}  // namespace fettle::maths
