#pragma once
#include "core/steps/config_review/inputs.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// Whether what the controller believes fits what is physically there.
///
/// Values are those of matched rows of `found`, and as found where no row has them; matched values become
/// as found for the other steps once the run is accepted (StepResult::found). Numbers may carry a unit: "18
/// m/s2", "800 mA". A row without a setting is not used; where its name fits one setting this is suggested.
///
/// Steps per mm and motor currents: see config_review/drives.h. Travel, bed, temperatures, top speeds:
/// config_review/limits.h. Probing: config_review/probing.h. `inconsistencies` counts the cautions and
/// faults among these findings; what is wrong on the machine sheet itself comes with them
/// (checkMachineSheet). Refused: a matched value or one as found that is no number in the unit or bounds of
/// its setting, a setting matched twice with other values; the setting then counts as not known.
StepResult evaluate(const ConfigReviewInputs& inputs, const StepContext& context);

Step configReviewStep();

}  // namespace fettle
