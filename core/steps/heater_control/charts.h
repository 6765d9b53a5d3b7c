#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/heater_control/hold_test.h"
#include "core/steps/heater_control/log.h"
#include "core/steps/heater_control/relay_test.h"
#include "core/steps/heater_control/simulation.h"
#include "core/steps/heater_control/step_test.h"

namespace fettle {

/// What there is to draw; parts that were not made stay empty.
struct HeaterPicture {
  std::string about;  ///< the heater, as people say it
  std::optional<HeaterLog> log;
  std::optional<StepAnswer> step;
  std::optional<RelaySwing> relay;
  std::optional<HoldAnswer> hold;
  Simulation simulation;
  std::optional<double> maximum;  ///< °C
};

/// `hold` (temperature less target, near it), `response` (the log with what was read from it), `residuals`
/// of a step test, `duty` where the log has one, `rules` (simulated heating-up of each rule).
std::vector<Chart> heaterCharts(const HeaterPicture& picture);

}  // namespace fettle
