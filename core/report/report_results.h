#pragma once
#include "core/history/history.h"
#include "core/report/report.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// What the evaluation of a run gave: values with expanded uncertainty, limits and verdicts, settings as
/// found, proposed and as left, findings (faults first) and charts; or why it gave nothing.
ReportBlocks reportResults(const Step& step, const StepRun& run, const Evaluated& evaluated);

}  // namespace fettle
