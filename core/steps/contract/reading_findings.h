#pragma once
#include <cstddef>
#include <span>
#include <string>

#include "core/steps/contract/step_result.h"

namespace fettle {

/// Adds `single-reading` for a value that rests on one reading alone: nothing is known of its scatter and
/// U holds the instrument only.
void noteSingleReading(StepResult& result, const std::string& what);

/// Adds one `outlier` that names every reading marked by the modified z-score or by Grubbs' test (see
/// maths/outliers.h); none is left out. `rows` are the rows as the user counts them, `resolution` that of
/// one reading, `unit` a unit key.
void noteOutliers(StepResult& result, std::span<const double> values, std::span<const std::size_t> rows,
                  double resolution, const std::string& what, const std::string& unit);

}  // namespace fettle
