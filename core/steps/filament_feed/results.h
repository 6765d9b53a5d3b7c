#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct FilamentFeedResults {
  ResultKey<> feed, drawnRatio;
  ResultKey<1> speed, ratioAtSpeed, slip;  ///< k counted from the slowest speed
  ResultKey<> diameterMean, ovality, flowEffect, moistureLost;
  SettingKey<> feedSetting;
  void describe(ResultList& results);
};

}  // namespace fettle
