#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step.h"
#include "core/steps/filament_feed/diameters.h"
#include "core/steps/filament_feed/draws.h"

namespace fettle {

struct FilamentFeedInputs {
  std::vector<Draw> draws;
  std::vector<DiameterPlace> diameters;
  std::string lot;
  std::optional<double> dryingTemperature, dryingTime, massBefore, massAfter;
  void describe(FieldList& fields);
};

/// How much filament the feeder really draws, and how thick it is.
///
/// `feed_steps_per_mm` = as found / `drawn_ratio`, relative uncertainties alike; the ratio and the slip
/// from draws, see filament_feed/draws.h; diameters, see filament_feed/diameters.h. `moisture_lost` =
/// 100·(mass before − mass after)/mass before in %; the scale's limit of error cancels in the difference.
/// Without draws the step is incomplete, whatever else was entered.
StepResult evaluate(const FilamentFeedInputs& inputs, const StepContext& context);

Step filamentFeedStep();

}  // namespace fettle
