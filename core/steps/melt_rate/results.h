#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct MeltRateResults {
  ResultKey<> flowLimit, flowSafe, hingeFlow, plateau, slope;
  ResultKey<1> speedLimit, speedSafe;  ///< of the line size in row k
  TextKey<1> lineSize;
  ResultKey<> heatNeeded, heatAvailable;
  SettingKey<> flowLimitSetting, flowSafeSetting;
  void describe(ResultList& results);
};

}  // namespace fettle
