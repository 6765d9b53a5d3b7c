#include "core/steps/filament_feed/diameters.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/filament_feed/results.h"

namespace fettle {
namespace {

constexpr std::size_t wantedPlaces = 5;

Quantity meanDiameter(const std::vector<double>& means, const Instrument& first, const Instrument& second) {
  const auto n = static_cast<double>(means.size());
  const double mean = maths::mean(means);
  const double limit = first == second
                           ? first.limitOfError(mean)
                           : std::hypot(first.limitOfError(mean), second.limitOfError(mean)) / 2;
  std::vector<Contribution> parts{{std::hypot(first.r, second.r) / (2 * std::sqrt(12 * n))},
                                  {limit / std::sqrt(3.0)}};
  if (means.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(means) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(mean, "mm", parts);
}

void giveOvality(StepResult& result, const std::vector<DiameterPlace>& places, const Instrument& first,
                 const Instrument& second) {
  double greatest = 0;
  for (const auto& place : places) {
    greatest = std::max(greatest, std::abs(*place.first - *place.second));
  }
  std::vector<Contribution> parts{{std::hypot(first.r, second.r) / std::sqrt(12.0)}};
  if (first != second) {
    parts.push_back(
        {std::hypot(first.limitOfError(greatest), second.limitOfError(greatest)) / std::sqrt(3.0)});
  }
  result.give(keysOf<FilamentFeedResults>().ovality, combinedQuantity(greatest, "mm", parts));
}

void giveFlowEffect(StepResult& result, const Quantity& mean, const std::optional<double>& nominal) {
  const auto& key = keysOf<FilamentFeedResults>();
  if (!nominal || *nominal <= 0) {
    result.withhold(key.flowEffect,
                    Text::tr("the filament's nominal diameter is not on the machine sheet"));
    return;
  }
  const double ratio = mean.value / *nominal;
  Quantity effect = mean;
  effect.value = ratio * ratio - 1;
  effect.unit = "1";
  effect.u = 2 * ratio * *mean.u / *nominal;
  result.give(key.flowEffect, effect);
  if (std::abs(effect.value) > *expandedUncertainty(effect)) {
    result.addFinding(
        "diameter-off", Severity::note,
        say(Text::tr("The filament is {0} mm thick and not {1} mm: {2} % of flow. Enter the measured "
                     "diameter where prints are prepared."),
            formatFixed(mean.value, 3), formatNumber(*nominal), formatFixed(100 * effect.value, 1)),
        {}, "filament_diameters");
  }
}

void noteReadings(StepResult& result, const std::vector<DiameterPlace>& places,
                  const std::vector<double>& means, double resolution) {
  if (means.size() == 1) {
    noteSingleReading(result, Text::tr("The filament's diameter"));
  } else if (means.size() < wantedPlaces) {
    result.addFinding(
        "few-places", Severity::note,
        say(Text::tr("{0} places were measured; five along a few metres show how the thickness "
                     "wanders."),
            means.size()),
        {}, "filament_diameters");
  }
  std::vector<std::size_t> rows;
  for (const auto& place : places) {
    rows.push_back(place.number);
  }
  noteOutliers(result, means, rows, resolution, Text::tr("diameter"), "mm");
}

}  // namespace

void giveDiameters(StepResult& result, const std::vector<DiameterPlace>& places,
                   const StepContext& context) {
  const auto counted = included(places);
  if (counted.empty()) {
    return;
  }
  const Instrument& first = context.instrument("first_mm");
  const Instrument& second = context.instrument("second_mm");
  std::vector<double> means;
  for (const auto& place : counted) {
    means.push_back(place.mean());
  }
  const Quantity mean = meanDiameter(means, first, second);
  result.give(keysOf<FilamentFeedResults>().diameterMean, mean);
  giveOvality(result, counted, first, second);
  giveFlowEffect(result, mean, context.sheet.filament);
  noteReadings(result, counted, means, std::hypot(first.r, second.r) / 2);
}

}  // namespace fettle
