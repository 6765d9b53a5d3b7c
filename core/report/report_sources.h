#pragma once
#include "core/measure/json.h"
#include "core/report/report.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// What the readings of a run were taken with: the readings that share an instrument in one row, with its
/// resolution and limit of error.
ReportTable instrumentsUsed(const Step& step, const Json& inputs);

/// The files the inputs refer to, each once, with the SHA-256 of its content where it is known.
ReportTable filesRead(const Json& inputs);

}  // namespace fettle
