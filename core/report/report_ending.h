#pragma once
#include "core/history/history.h"
#include "core/report/report.h"

namespace fettle {

/// What stands behind the steps: settings as found and as left, changes of parts with what they make due,
/// and what is open at the end of a session.
ReportBlocks reportEnding(const History& history, RecordId session);

}  // namespace fettle
