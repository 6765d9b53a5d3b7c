#pragma once
#include "core/report/report.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// The inputs of a run: single fields, each table with its rows (those left out are struck), grids and
/// checklists, the instruments behind them, and the files read, each with the SHA-256 of its content.
/// Inputs that a step refuses are shown as they were entered.
ReportBlocks reportReadings(const Step& step, const Json& inputs);

}  // namespace fettle
