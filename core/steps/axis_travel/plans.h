#pragma once
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// Targets to move to, for every axis whose travel is on the sheet: uneven ones (ISO 230-2:2014, clause 4,
/// from memory, wants no target at whole turns of a screw), the ends 10 mm clear of the travel's.
std::vector<EntryPlan> travelPlans();

}  // namespace fettle
