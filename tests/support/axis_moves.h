#pragma once
#include "core/measure/json.h"

namespace fettle::tests {

/// A row of the moves of axis-travel.
inline Json moveTo(double target, int direction, double measured, const char* axis = "x") {
  return {{"axis", axis}, {"target_mm", target}, {"direction", direction}, {"measured_mm", measured}};
}

}  // namespace fettle::tests
