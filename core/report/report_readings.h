#pragma once
#include <vector>

#include "core/history/history.h"
#include "core/report/report.h"
#include "core/steps/step.h"

namespace fettle {

/// The inputs of a run as tables: single fields first, then each table with its rows (those left out are
/// struck), grids and captures with the hash of their content.
std::vector<ReportBlock> reportReadings(const Step& step, const Json& inputs);

}  // namespace fettle
