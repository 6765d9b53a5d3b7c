#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/safety/inputs.h"

namespace fettle {

/// Whether the machine may be switched on: a checklist with initials and time, earth bond, heaters, supply
/// and fuses. Unplugged while measuring; work on the mains side is for a qualified person.
///
/// `critical-open` (fault) while earth bond, fuses, emergency stop, or heater and sensor clamped is not
/// ticked as right, and also when the readings speak against the tick: an earth reading that does not pass,
/// a fuse larger than its wire carries. It blocks the power-up check, so it is raised even while other
/// entries are incomplete.
///
/// Earth: `<part>.earth_ohm` ≤ 0.1 Ω (IEC 61010-1, from memory). Heaters: `<heater>.power_W` = V²/R and
/// `<heater>.current_A` = V/R as read cold, V blank: the sheet's supply_V; `<heater>.power_ratio` =
/// power/rated, rated blank: the sheet's hot_end_power_W or bed_power_W. The verdict of `<heater>.power_W`
/// is pass within 10 % of rated. A copper trace is compared at its working temperature, where its
/// resistance is R·(1 + 0.0039·(T − T_room)): `<heater>.working_power_W`, which then decides the verdict; a
/// ptc is not judged. An instrument named for `ohm` reads earth and heaters; else heaters are read with a
/// multimeter (1 % + 0.2 Ω). `supply_load_W` = sum of power of heaters on the supply + other_W, where the
/// limit of error of each meter is common to all heaters; `supply_load` = that/supply_W ≤ 0.8. Circuits:
/// see safety/circuits.h. A part or circuit named twice counts as another one (`frame_2`); refused: the
/// same heater twice, which withholds its results and the load of the supply.
StepResult evaluate(const SafetyInputs& inputs, const StepContext& context);

Step safetyStep();

}  // namespace fettle
