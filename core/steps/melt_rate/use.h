#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/melt_rate/flow_limit.h"
#include "core/steps/melt_rate/inputs.h"

namespace fettle {

/// Line sizes that count. One that is higher than wide is refused and left out.
std::vector<LineSize> usableSizes(StepResult& result, const std::vector<LineSize>& sizes);

/// Gives `flow_safe` = (1 − margin)·lower limit and proposes it and the flow limit.
std::optional<double> giveSafeFlow(StepResult& result, const FlowLimit& flow, double margin);

/// Gives `line_<row>.speed_limit` and `line_<row>.speed_safe` = Q/A with the interval of Q, and the size in
/// words; notes `no-line-size` when there is none to give a speed for.
void giveSpeeds(StepResult& result, const std::vector<LineSize>& sizes, const FlowLimit& flow,
                const std::optional<double>& safe);

/// Gives `heat_needed_W` and `heat_available_W` and says which of heater and melt zone limits the flow;
/// withheld with the reason while something is not known. Nothing while neither specific heat nor hold duty
/// was entered.
void giveHeat(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
              const FlowLimit& flow);

}  // namespace fettle
