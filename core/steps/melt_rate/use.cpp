#include "core/steps/melt_rate/use.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/melt_rate/results.h"
#include "core/steps/melt_rate/steps.h"

namespace fettle {
namespace {

Quantity times(Quantity quantity, double factor, const char* unit) {
  const auto scale = [&](std::optional<double>& part) {
    if (part) {
      *part *= factor;
    }
  };
  quantity.value *= factor;
  quantity.unit = unit;
  scale(quantity.u);
  scale(quantity.low);
  scale(quantity.high);
  return quantity;
}

std::optional<double> densityOf(const MeltRateInputs& inputs) {
  if (inputs.density) {
    return inputs.density;
  }
  const auto steps = included(inputs.steps);
  const auto known = std::find_if(steps.begin(), steps.end(),
                                  [](const FlowStep& step) { return step.density.has_value(); });
  return known == steps.end() ? std::nullopt : known->density;
}

/// As typed, or what holding the temperature takes by the gain of the accepted heater control.
std::optional<double> holdDutyOf(const MeltRateInputs& inputs, const StepContext& context) {
  if (inputs.holdDuty) {
    return inputs.holdDuty;
  }
  const auto gain = context.acceptedQuantity("heater-control", "hot_end.gain_C");
  return gain && gain->value > 0 && inputs.temperature
             ? std::optional(std::clamp((*inputs.temperature - inputs.room) / gain->value, 0.0, 1.0))
             : std::nullopt;
}

std::optional<Quantity> heatNeeded(StepResult& result, const MeltRateInputs& inputs,
                                   const FlowLimit& flow) {
  const auto& key = keysOf<MeltRateResults>();
  const auto density = densityOf(inputs);
  if (!flow.limit) {
    flow.noLimit.withhold(result, key.heatNeeded);
    return std::nullopt;
  }
  if (!density || !inputs.temperature || !inputs.specificHeat) {
    result.withhold(key.heatNeeded, !density              ? Text::tr("the density is not known")
                                    : !inputs.temperature ? Text::tr("the nozzle temperature is not known")
                                                          : Text::tr("the specific heat is not known"));
    return std::nullopt;
  }
  if (!std::isfinite(inputs.room)) {
    result.withhold(key.heatNeeded, {});
    return std::nullopt;
  }
  const double perFlow = *density / mm3PerCm3 * *inputs.specificHeat * (*inputs.temperature - inputs.room);
  const Quantity heat = times(*flow.limit, perFlow, "W");
  result.give(key.heatNeeded, heat);
  return heat;
}

std::optional<double> heatAvailable(StepResult& result, const MeltRateInputs& inputs,
                                    const StepContext& context) {
  const auto& key = keysOf<MeltRateResults>();
  const auto duty = holdDutyOf(inputs, context);
  const auto power = context.sheet.hotEndPower;
  if (!duty || !power) {
    result.withhold(key.heatAvailable, duty ? Text::tr("the hot end's power is not on the machine sheet")
                                            : Text::tr("the hold duty is not known"));
    return std::nullopt;
  }
  if (!std::isfinite(*duty)) {
    result.withhold(key.heatAvailable, {});
    return std::nullopt;
  }
  const double watts = *power * (1 - *duty);
  result.give(key.heatAvailable, watts);
  return watts;
}

void compareHeat(StepResult& result, double needed, double available) {
  const std::string need = formatFixed(needed, 1);
  const std::string left = formatFixed(available, 1);
  if (needed < available) {
    result.addFinding(
        "melt-zone-limits", Severity::note,
        say(Text::tr("Power is not the limit: {0} W needed, {1} W left at this temperature. A longer "
                     "melt zone would help, a stronger heater would not."),
            need, left));
  } else {
    result.addFinding(
        "heater-limits", Severity::caution,
        say(Text::tr("The heater is the limit: {0} W needed, {1} W left at this temperature. The "
                     "nozzle cools at this flow."),
            need, left),
        "heater-control");
  }
}

}  // namespace

std::vector<LineSize> usableSizes(StepResult& result, const std::vector<LineSize>& sizes) {
  auto counted = included(sizes);
  std::erase_if(counted, [&](const LineSize& size) {
    const bool wrong = *size.width < *size.height;
    if (wrong) {
      result.refuse({say(Text::tr("Line sizes, row {0}: a line {1} mm wide and {2} mm high is higher than "
                                  "wide; a width of {2} mm or more is needed."),
                         size.number, formatNumber(*size.width), formatNumber(*size.height)),
                     fmt::format("line_sizes[{}]", size.number)});
    }
    return wrong;
  });
  return counted;
}

std::optional<double> giveSafeFlow(StepResult& result, const FlowLimit& flow, double margin) {
  const auto& key = keysOf<MeltRateResults>();
  if (flow.limit) {
    result.propose(key.flowLimitSetting, *flow.limit);
  }
  if (!flow.lower) {
    flow.noLower.withhold(result, key.flowSafe);
    return std::nullopt;
  }
  if (!std::isfinite(margin)) {
    result.withhold(key.flowSafe, {});
    return std::nullopt;
  }
  const Quantity safe = plainQuantity((1 - margin) * *flow.lower, "mm3/s");
  result.give(key.flowSafe, safe);
  result.propose(key.flowSafeSetting, safe);
  return safe.value;
}

void giveSpeeds(StepResult& result, const std::vector<LineSize>& sizes, const FlowLimit& flow,
                const std::optional<double>& safe) {
  const auto& key = keysOf<MeltRateResults>();
  if (sizes.empty() && (flow.limit || safe)) {
    result.addFinding(
        "no-line-size", Severity::note,
        Text::tr("No line size is entered: what print speeds the flow allows is not known, and the "
                 "chart has no axis of print speed. Enter width and height of a line."),
        {}, "line_sizes");
  }
  for (const auto& size : sizes) {
    const std::string width = formatNumber(*size.width), height = formatNumber(*size.height);
    const Name name(std::to_string(size.number), width + " × " + height + " mm");
    result.give(key.lineSize(name), say(Text::tr("{0} mm wide, {1} mm high"), width, height));
    if (flow.limit) {
      result.give(key.speedLimit(name), times(*flow.limit, 1 / size.area(), "mm/s"));
    } else {
      flow.noLimit.withhold(result, key.speedLimit(name));
    }
    if (safe) {
      result.give(key.speedSafe(name), *safe / size.area());
    } else {
      result.withhold(key.speedSafe(name), Text::tr("there is no safe flow"));
    }
  }
}

void giveHeat(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
              const FlowLimit& flow) {
  if (!inputs.specificHeat && !inputs.holdDuty) {
    return;
  }
  const auto needed = heatNeeded(result, inputs, flow);
  const auto available = heatAvailable(result, inputs, context);
  if (needed && available) {
    compareHeat(result, needed->value, *available);
  }
}

}  // namespace fettle
