#include "core/steps/config_review/results.h"

#include <stdexcept>

#include "core/measure/text.h"
#include "core/steps/config_review/settings.h"

namespace fettle {

void ConfigReviewResults::describe(ResultList& results) {
  results.name("axis", {{"x", "x"}, {"y", "y"}, {"z", "z"}});
  results.quantity("inconsistencies", inconsistencies, Text::tr("Faults and cautions"), "1")
      .headline()
      .within(std::nullopt, 0.0);
  results.quantity("<axis>.steps_per_mm_expected", stepsExpected, Text::tr("Steps per mm of the parts"),
                   "1/mm");
  results.quantity("<axis>.steps_per_mm_ratio", stepsRatio, Text::tr("Steps as found / expected"), "1")
      .within(0.995, 1.005);
  results.quantity("<axis>.motor_current_rms_A", currentRms, Text::tr("Motor current, rms"), "A");
  results.quantity("<axis>.current_ratio", currentRatio, Text::tr("Motor current / rated"), "1")
      .within(std::nullopt, 0.85);
  results.quantity("<axis>.reachable_speed", reachableSpeed, Text::tr("Highest speed on the travel"),
                   "mm/s");
  results.quantity("hot_end_limit_C", hotEndLimit, Text::tr("Limit of the hot end"), "C");
  results.quantity("bed_limit_C", bedLimit, Text::tr("Limit of the bed"), "C");
  results.quantity("safe_min_x", safeMinX, Text::tr("Tip reaches the bed from x"), "mm");
  results.quantity("safe_max_x", safeMaxX, Text::tr("Tip reaches the bed to x"), "mm");
  results.quantity("safe_min_y", safeMinY, Text::tr("Tip reaches the bed from y"), "mm");
  results.quantity("safe_max_y", safeMaxY, Text::tr("Tip reaches the bed to y"), "mm");
  for (const auto& setting : reviewedSettings()) {
    const auto& id = setting.id;
    const auto described = namesOf(id).empty()
                               ? results.setting(id, m_ofMachine[id], setting.label, setting.unit)
                               : results.setting(id, m_ofAxis[id], setting.label, setting.unit);
    SettingHandle(described).words(setting.words).disturbs(setting.disturbs);
  }
}

SettingId ConfigReviewResults::setting(const std::string& id) const {
  if (const auto key = m_ofMachine.find(id); key != m_ofMachine.end()) {
    return key->second;
  }
  for (const auto& [pattern, key] : m_ofAxis) {
    if (const auto names = namesIn(id, pattern)) {
      return key(names->front());
    }
  }
  throw std::logic_error(id + " is no setting that is reviewed");
}

}  // namespace fettle
