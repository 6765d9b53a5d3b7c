#pragma once
#include "core/maths/shaper.h"

namespace fettle::tests {

/// A shaper made for this frequency and damping; `tolerance` is the height of the humps of the EI family.
inline maths::Shaper shaperAt(maths::ShaperKind kind, double frequency, double damping,
                              double tolerance = 0.05) {
  return maths::scaledShaper(maths::shaperShape(kind, damping, tolerance).value(), frequency);
}

}  // namespace fettle::tests
