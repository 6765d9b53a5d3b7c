#pragma once
#include <vector>

namespace fettle::maths {

/// One impulse of a shaper.
struct Impulse {
  double amplitude = 0.0;  ///< share; all shares of a shaper are above 0 and sum to 1
  double time = 0.0;       ///< s, or damped periods in a ShaperShape; the first is at 0
};

/// A shaper for one damping ratio, whatever the frequency: times in damped periods T_d = 1/(f√(1−ζ²)).
struct ShaperShape {
  std::vector<Impulse> impulses;
  double damping = 0.0;
};

}  // namespace fettle::maths
