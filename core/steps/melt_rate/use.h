#pragma once
#include <optional>
#include <vector>

#include "core/steps/melt_rate.h"

namespace fettle {

/// Line sizes that count. Throws Refusal for one that is higher than wide.
std::vector<LineSize> includedSizes(const std::vector<LineSize>& sizes);

/// Gives `line_<row>.speed_limit` and `line_<row>.speed_safe` = Q/A with the interval of Q, and the size in
/// words; notes `no-line-size` when there is none to give a speed for.
void giveSpeeds(StepResult& result, const std::vector<LineSize>& sizes,
                const std::optional<Quantity>& limit, const std::optional<double>& safe);

/// Gives `heat_needed_W` and `heat_available_W` and says which of heater and melt zone limits the flow;
/// withheld with the reason while something is not known. Nothing without temperature and specific heat.
void giveHeat(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
              const std::optional<Quantity>& limit);

}  // namespace fettle
