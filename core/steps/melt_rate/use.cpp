#include "core/steps/melt_rate/use.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
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

std::optional<double> holdDutyOf(const MeltRateInputs& inputs, const StepContext& context) {
  if (inputs.holdDuty) {
    return inputs.holdDuty;
  }
  const auto gain = context.acceptedNumber("heater-control", "hot_end.gain_C");
  return gain && *gain > 0
             ? std::optional(std::clamp((*inputs.temperature - inputs.room) / *gain, 0.0, 1.0))
             : std::nullopt;
}

std::optional<Quantity> heatNeeded(StepResult& result, const MeltRateInputs& inputs,
                                   const std::optional<Quantity>& limit) {
  const auto density = densityOf(inputs);
  if (!limit || !density) {
    result.withhold("heat_needed_W", "W",
                    limit ? Text::tr("the density is not known")
                          : Text::tr("there is no flow limit within the tested flows"));
    return std::nullopt;
  }
  const double perFlow = *density / mm3PerCm3 * *inputs.specificHeat * (*inputs.temperature - inputs.room);
  const Quantity heat = times(*limit, perFlow, "W");
  result.give("heat_needed_W", heat);
  return heat;
}

std::optional<double> heatAvailable(StepResult& result, const MeltRateInputs& inputs,
                                    const StepContext& context) {
  const auto duty = holdDutyOf(inputs, context);
  const auto power = context.sheet.hotEndPower;
  if (!duty || !power) {
    result.withhold("heat_available_W", "W",
                    duty ? Text::tr("the hot end's power is not on the machine sheet")
                         : Text::tr("the hold duty is not known"));
    return std::nullopt;
  }
  const double watts = *power * (1 - *duty);
  result.give("heat_available_W", watts, "W");
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

std::vector<LineSize> includedSizes(const std::vector<LineSize>& sizes) {
  auto counted = included(sizes);
  for (const auto& size : counted) {
    if (*size.width < *size.height) {
      throw Refusal{say(Text::tr("Line sizes, row {0}: a line {1} mm wide and {2} mm high is higher than "
                                 "wide; a width of {2} mm or more is needed."),
                        size.number, formatNumber(*size.width), formatNumber(*size.height))};
    }
  }
  return counted;
}

void giveSpeeds(StepResult& result, const std::vector<LineSize>& sizes,
                const std::optional<Quantity>& limit, const std::optional<double>& safe) {
  if (sizes.empty() && (limit || safe)) {
    result.addFinding(
        "no-line-size", Severity::note,
        Text::tr("No line size is entered: what print speeds the flow allows is not known, and the "
                 "chart has no axis of print speed. Enter width and height of a line."));
  }
  for (const auto& size : sizes) {
    const std::string name = fmt::format("line_{}.", size.number);
    result.say(name + "size", say(Text::tr("{0} mm wide, {1} mm high"), formatNumber(*size.width),
                                  formatNumber(*size.height)));
    if (limit) {
      result.give(name + "speed_limit", times(*limit, 1 / size.area(), "mm/s"));
    } else {
      result.withhold(name + "speed_limit", "mm/s",
                      Text::tr("there is no flow limit within the tested flows"));
    }
    if (safe) {
      result.give(name + "speed_safe", *safe / size.area(), "mm/s");
    } else {
      result.withhold(name + "speed_safe", "mm/s", Text::tr("there is no safe flow"));
    }
  }
}

void giveHeat(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
              const std::optional<Quantity>& limit) {
  if (!inputs.temperature || !inputs.specificHeat) {
    return;
  }
  const auto needed = heatNeeded(result, inputs, limit);
  const auto available = heatAvailable(result, inputs, context);
  if (needed && available) {
    compareHeat(result, needed->value, *available);
  }
}

}  // namespace fettle
