#pragma once
#include "core/steps/contract/step.h"
#include "core/steps/probe_position/inputs.h"

namespace fettle {

/// Where the probe tip sits relative to the nozzle, what it can reach, and where a probing grid planned
/// with the offset in force really lands.
///
/// Offset of a mark = nozzle − probe: with the nozzle over the mark the mark is at the nozzle's carriage
/// coordinate; with the tip over it at the tip's coordinate plus the offset. Marks are averaged;
/// u² = s²/n + (r_n² + r_p²)/(12 n) + (e_n² + e_p²)/3. Setting the nozzle over a mark and setting the tip
/// over it are two alignments of different things, seen from different heights: each column has its own
/// limit of error, common to all marks, so neither is divided by n and they do not cancel in the
/// difference. Offsets measured directly are means of readings (see meanOfReadings). The offset in force
/// and commanded coordinates are exact.
///
/// Reach and landings: see contract/reach.h. Bed and travel come from the machine sheet; the grid from the
/// inputs, or as in force where these are blank. Marks count before direct offsets.
/// Refused, each with what rests on it alone: a grid, a travel or a bed whose limits are the wrong way
/// round, and counts that are not whole numbers of 2 to 100.
StepResult evaluate(const ProbePositionInputs& inputs, const StepContext& context);

Step probePositionStep();

}  // namespace fettle
