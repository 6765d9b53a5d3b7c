#include "core/steps/melt_rate/steps.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/melt_rate/results.h"

namespace fettle {
namespace {

// More than scale, density and rounding explain between a typed part and a weighed one; no source.
constexpr double contradiction = 0.02;
constexpr double plateauAllowance = 0.05;  // common practice, no source
constexpr std::size_t parameters = 3;

std::string cell(const FlowStep& step, const char* column) {
  return fmt::format("steps[{}].{}", step.number, column);
}

/// Mass of what was commanded; none, and the reason in `missing`, while volume or density is blank.
std::optional<double> commandedMass(const FlowStep& step, const MeltRateInputs& inputs,
                                    std::set<std::string>& missing) {
  const auto volume = step.volume ? step.volume : inputs.volume;
  const auto density = step.density ? step.density : inputs.density;
  if (!volume) {
    missing.insert("volume_mm3");
  }
  if (!density) {
    missing.insert("density_g_cm3");
  }
  return volume && density ? std::optional(*volume * *density / mm3PerCm3) : std::nullopt;
}

/// Mass and typed part of one row do not belong together, in one sentence.
std::optional<Refusal> contradictionIn(const FlowStep& step, double weighed) {
  if (!step.delivered || std::abs(*step.delivered - weighed) <= contradiction) {
    return std::nullopt;
  }
  return Refusal{
      say(Text::tr("Steps, row {0}: {1} was typed as delivered, but the mass of {2} g makes it "
                   "{3}; leave one of them blank."),
          step.number, formatNumber(*step.delivered), formatNumber(*step.mass), formatFixed(weighed, 3)),
      fmt::format("steps[{}]", step.number)};
}

void addExcluded(DeliveredSteps& steps, const FlowStep& step, const MeltRateInputs& inputs) {
  std::set<std::string> ignored;
  const auto commanded = step.mass ? commandedMass(step, inputs, ignored) : std::nullopt;
  const auto delivered = commanded ? std::optional(*step.mass / *commanded) : step.delivered;
  if (step.flow && delivered) {
    steps.excludedFlow.push_back(*step.flow);
    steps.excludedDelivered.push_back(*delivered);
  }
}

void add(DeliveredSteps& steps, const FlowStep& step, double delivered) {
  steps.flow.push_back(*step.flow);
  steps.delivered.push_back(delivered);
  steps.rows.push_back(step.number);
}

void refuseTooFew(const DeliveredSteps& steps) {
  if (!areEnough(steps)) {
    const std::set<double> different(steps.flow.begin(), steps.flow.end());
    throw Refusal{say(Text::tr("Steps: too few for a plateau and a falling line (rows: {0}, different "
                               "flows: {1}); {2} different flows or more are needed, better 8."),
                      steps.flow.size(), different.size(), parameters),
                  "steps"};
  }
}

Quantity fitted(double value, const maths::Hinge& hinge, Eigen::Index index, double common) {
  if (!hinge.covariance) {
    return plainQuantity(value, "1");
  }
  const Contribution parts[] = {{std::sqrt((*hinge.covariance)(index, index)), hinge.degreesOfFreedom},
                                {common}};
  return combinedQuantity(value, "1", parts);
}

Quantity profiled(double value, const std::optional<maths::ProfileInterval>& interval) {
  Quantity quantity = plainQuantity(value, "mm3/s");
  if (interval && !interval->meetsRangeLow) {
    quantity.low = interval->low;
  }
  if (interval && !interval->meetsRangeHigh) {
    quantity.high = interval->high;
  }
  return quantity;
}

void noteBracket(StepResult& result, const maths::Hinge& hinge, double lowest, double highest) {
  const auto& interval = hinge.hingeInterval;
  if (!interval) {
    result.addFinding(
        "hinge-not-bracketed", Severity::caution,
        Text::tr("Three steps give a hinge but no interval: nothing is known of their scatter. Add "
                 "steps on both sides of the hinge."),
        {}, "steps");
  } else if (interval->meetsRangeLow || interval->meetsRangeHigh) {
    result.addFinding(
        "hinge-not-bracketed", Severity::caution,
        say(Text::tr("The interval of the hinge, {0} … {1} mm³/s, meets the end of the tested flows, {2} … "
                     "{3} mm³/s: add steps {4}."),
            formatFixed(interval->low, 1), formatFixed(interval->high, 1), formatNumber(lowest),
            formatNumber(highest),
            !interval->meetsRangeHigh  ? Text::tr("at lower flows")
            : !interval->meetsRangeLow ? Text::tr("at higher flows")
                                       : Text::tr("at lower and at higher flows")),
        {}, "steps");
  }
}

void notePlateau(StepResult& result, double plateau) {
  if (std::abs(plateau - 1) > plateauAllowance) {
    result.addFinding(
        "plateau-off", Severity::caution,
        say(Text::tr("At low flow {0} of the commanded plastic comes out. That is not melting: look "
                     "at the feed's steps per mm, the filament's diameter and the density first."),
            formatFixed(plateau, 3)),
        "filament-feed");
  }
}

/// Delivery that nowhere falls: the limit is above what was tested.
FlowLimit withoutHinge(StepResult& result, const DeliveredSteps& steps) {
  const double highest = *std::max_element(steps.flow.begin(), steps.flow.end());
  const Quantity scatter =
      meanOfReadingsWithoutCommonError(steps.delivered, Instrument{"", steps.resolution}, "1");
  const Contribution parts[] = {{*scatter.u, scatter.dof}, {steps.commonError / std::sqrt(3.0)}};
  const std::string why = Text::tr("delivery does not fall within the tested flows");
  const auto& key = keysOf<MeltRateResults>();
  result.give(key.plateau, combinedQuantity(scatter.value, "1", parts));
  result.withhold(key.slope, why);
  result.withhold(key.hingeFlow, why);
  result.withhold(key.flowLimit, why);
  result.addFinding("hinge-not-bracketed", Severity::caution,
                    say(Text::tr("Delivery does not fall up to {0} mm³/s: add steps at higher flows."),
                        formatNumber(highest)),
                    {}, "steps");
  notePlateau(result, scatter.value);
  FlowLimit limit;
  limit.noLimit.why = limit.noLower.why = why;
  return limit;
}

FlowLimit flowLimitOf(StepResult& result, const maths::Hinge& hinge, double highest) {
  FlowLimit flow;
  flow.hinge = hinge;
  const auto& key = keysOf<MeltRateResults>();
  if (!hinge.fallPoint) {
    flow.noLimit.why = flow.noLower.why = Text::tr("the plateau is not above zero");
    result.withhold(key.flowLimit, flow.noLimit.why);
    return flow;
  }
  const Quantity limit = profiled(*hinge.fallPoint, hinge.fallPointInterval);
  result.give(key.flowLimit, limit);
  flow.lower = limit.low;
  if (!flow.lower) {
    flow.noLower.why = hinge.fallPointInterval
                           ? Text::tr("the lower limit of the flow limit lies below the tested flows")
                           : Text::tr("four steps or more are needed for an interval");
  }
  if (limit.value <= highest) {
    flow.limit = limit;
  } else {
    flow.noLimit.why = Text::tr("there is no flow limit within the tested flows");
    result.addFinding(
        "limit-beyond-data", Severity::caution,
        say(Text::tr("Delivery has not fallen by 5 % up to {0} mm³/s; {1} mm³/s only continues the "
                     "falling line. Add steps at higher flows."),
            formatNumber(highest), formatFixed(limit.value, 1)),
        {}, "steps");
  }
  return flow;
}

}  // namespace

bool areEnough(const DeliveredSteps& steps) {
  return std::set<double>(steps.flow.begin(), steps.flow.end()).size() >= parameters;
}

DeliveredSteps deliveredSteps(StepResult& result, const MeltRateInputs& inputs, const StepContext& context,
                              std::vector<std::string>& lacks) {
  DeliveredSteps steps;
  std::set<std::string> blank;
  for (const auto& step : inputs.steps) {
    if (step.excluded) {
      addExcluded(steps, step, inputs);
    } else if (!step.mass && !step.delivered) {
      blank.insert(cell(step, "delivered"));
    } else if (!step.mass) {
      add(steps, step, *step.delivered);
    } else if (const auto commanded = commandedMass(step, inputs, blank)) {
      if (const auto refusal = contradictionIn(step, *step.mass / *commanded)) {
        result.refuse(*refusal);
        continue;
      }
      const Instrument& scale = context.instrument("mass_g");
      add(steps, step, *step.mass / *commanded);
      steps.commonError += scale.limitOfError(*step.mass) / *commanded;
      steps.resolution += scale.r / *commanded;
    }
  }
  const double count = std::max(static_cast<double>(steps.flow.size()), 1.0);
  steps.commonError /= count;
  steps.resolution /= count;
  lacks.assign(blank.begin(), blank.end());
  return steps;
}

FlowLimit giveHinge(StepResult& result, const DeliveredSteps& steps) {
  refuseTooFew(steps);
  const auto hinge = maths::fitHinge(steps.flow, steps.delivered);
  if (!hinge) {
    return withoutHinge(result, steps);
  }
  const auto [lowest, highest] = std::minmax_element(steps.flow.begin(), steps.flow.end());
  const double common = steps.commonError / std::sqrt(3.0);
  const auto& key = keysOf<MeltRateResults>();
  result.give(key.plateau, fitted(hinge->plateau, *hinge, 0, common));
  result.give(key.slope, fitted(hinge->slope, *hinge, 1, common / (*highest - hinge->hinge)));
  result.give(key.hingeFlow, profiled(hinge->hinge, hinge->hingeInterval));
  noteBracket(result, *hinge, *lowest, *highest);
  notePlateau(result, hinge->plateau);
  constexpr double rounding = 1e-9;  // residuals of rows that lie exactly on the lines
  const bool scatters = std::any_of(hinge->residuals.begin(), hinge->residuals.end(),
                                    [&](double residual) { return std::abs(residual) > rounding; });
  if (scatters) {
    noteOutliers(result, hinge->residuals, steps.rows, steps.resolution, Text::tr("delivered less fitted,"),
                 "1");
  }
  return flowLimitOf(result, *hinge, *highest);
}

}  // namespace fettle
