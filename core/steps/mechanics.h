#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/mechanics/inputs.h"

namespace fettle {

/// Whether frame and moving parts are as they should be before power is on: the checklist (see
/// mechanics/checks.h), the diagonals of the frame's faces (mechanics/diagonals.h) and the force that moves
/// each axis (mechanics/drag.h). What is not answered on the checklist is open and leaves the step
/// undecided; only without any entry is it incomplete. What was read once is said in one finding.
StepResult evaluate(const MechanicsInputs& inputs, const StepContext& context);

Step mechanicsStep();

}  // namespace fettle
