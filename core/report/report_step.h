#pragma once
#include "core/history/history.h"
#include "core/report/report.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// What is to be said of a step in a session: purpose and caution, written decisions, and each of its runs
/// with readings, results and notes. A step not touched in the session stands as it was accepted last;
/// empty when it never was.
ReportBlocks reportStep(const History& history, const Step& step, int number, RecordId session);

}  // namespace fettle
