#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/safety/inputs.h"

namespace fettle {

/// Gives `<part>.earth_ohm`; findings `earth-high` (fault) beyond its tolerance, `earth-undecided`
/// (caution) too near to it. Returns what speaks against the bond, in words.
std::vector<std::string> judgeEarth(StepResult& result, const std::vector<EarthReading>& parts,
                                    const StepContext& context,
                                    const std::function<Tolerance(const ResultId&)>& toleranceOf);

/// Resistance part by part, with the limit.
Chart earthChart(const std::vector<EarthReading>& parts, const Tolerance& allowed,
                 const StepContext& context);

}  // namespace fettle
