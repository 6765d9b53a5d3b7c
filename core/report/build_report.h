#pragma once
#include <string>

#include "core/history/history.h"
#include "core/report/report.h"

namespace fettle {

/// The commissioning report of a session: machine, session, cautions, where every step stands, each step's
/// readings, values with expanded uncertainty, verdicts, findings, charts and notes, the settings as found
/// and as left, and what is open. Pure: from the history alone.
Report buildReport(const History& history, RecordId session);

/// Every quantity of a session and, in a second table, its settings, comma separated (RFC 4180), with
/// decimal points and ASCII minus signs.
std::string reportAsCsv(const History& history, RecordId session);

}  // namespace fettle
