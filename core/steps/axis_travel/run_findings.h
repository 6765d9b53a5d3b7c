#pragma once
#include "core/steps/axis_travel/runs.h"

namespace fettle {

/// Says where the runs of an axis fall short of ISO 230-2, `fewer-runs-than-standard` and
/// `fewer-targets-than-standard`, where a figure rests on single runs, `single-reading`, and which runs lie
/// far from the others, one `outlier` for the axis.
///
/// Five runs are too few to show their own scatter, so all runs of the axis are judged together: the
/// distances of the runs from the median of their approach, of approaches with three runs or more, by the
/// common rule for outliers. A run that is the median itself has no distance and is left out of the
/// scatter.
void noteRuns(StepResult& result, const AxisRuns& runs, const Instrument& instrument);

}  // namespace fettle
