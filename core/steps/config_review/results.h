#pragma once
#include <map>
#include <string>

#include "core/steps/contract/result_list.h"

namespace fettle {

class ConfigReviewResults {
 public:
  ResultKey<> inconsistencies;
  ResultKey<1> stepsExpected, stepsRatio, currentRms, currentRatio, reachableSpeed;  ///< of an axis
  ResultKey<> hotEndLimit, bedLimit;
  ResultKey<> safeMinX, safeMaxX, safeMinY, safeMaxY;

  void describe(ResultList& results);
  /// The id of a setting that can be listed: "travel_max_x", "x.steps_per_mm".
  SettingId setting(const std::string& id) const;

 private:
  // The settings are a table (see settings.h), so their keys are one too; by id and by pattern.
  std::map<std::string, SettingKey<>> m_ofMachine;
  std::map<std::string, SettingKey<1>> m_ofAxis;
};

}  // namespace fettle
