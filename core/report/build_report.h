#pragma once
#include <string>

#include "core/history/history.h"
#include "core/report/report.h"

namespace fettle {

/// The commissioning report of a session: session, machine, cautions and where every step stands as a
/// summary in front; then each step's readings, values with expanded uncertainty, verdicts, settings,
/// findings, charts and notes; the settings as found and as left, the changes of parts, and what is open.
/// Pure: from the history alone.
Report buildReport(const History& history, RecordId session);

/// Every result of a session and, in a second table after an empty line, its settings: comma separated
/// (RFC 4180), UTF-8, decimal points, ASCII minus signs, unit keys as in files.
std::string reportAsCsv(const History& history, RecordId session);

}  // namespace fettle
