#include "core/steps/catalogue.h"

#include <algorithm>

#include "core/steps/axis_travel.h"
#include "core/steps/bed_shape.h"
#include "core/steps/belt_tension.h"
#include "core/steps/config_review.h"
#include "core/steps/filament_feed.h"
#include "core/steps/heater_control.h"
#include "core/steps/mechanics.h"
#include "core/steps/melt_rate.h"
#include "core/steps/power_up.h"
#include "core/steps/probe_position.h"
#include "core/steps/resonance.h"
#include "core/steps/safety.h"
#include "core/steps/temperature_sensor.h"

namespace fettle {

const std::vector<Step>& catalogue() {
  // One line a step.
  // clang-format off
  static const std::vector<Step> steps{
      mechanicsStep(),
      safetyStep(),
      powerUpStep(),
      configReviewStep(),
      temperatureSensorStep(),
      heaterControlStep(),
      beltTensionStep(),
      axisTravelStep(),
      resonanceStep(),
      probePositionStep(),
      bedShapeStep(),
      filamentFeedStep(),
      meltRateStep(),
  };
  // clang-format on
  return steps;
}

const Step* findStep(const std::string& key) {
  const auto& steps = catalogue();
  const auto found =
      std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.key == key; });
  return found == steps.end() ? nullptr : &*found;
}

std::string stepName(const std::string& key) {
  const Step* step = findStep(key);
  return step ? step->name : key;
}

const std::vector<SettingDescription>& knownSettings() {
  static const std::vector<SettingDescription> settings = [] {
    std::vector<SettingDescription> all;
    for (const auto& step : catalogue()) {
      for (const auto& setting : step.settings) {
        const auto same = [&](const SettingDescription& known) { return known.id == setting.id; };
        if (std::none_of(all.begin(), all.end(), same)) {
          all.push_back(setting);
        }
      }
    }
    return all;
  }();
  return settings;
}

}  // namespace fettle
