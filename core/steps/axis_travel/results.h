#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct AxisTravelResults {
  ResultKey<1> reversal, reversalMean, repeatability, systematicDeviation, meanDeviation, accuracy;
  ResultKey<1> scaleError, travelRatio, stepsPerMm, homingSpread, homingRange;
  TextKey<1> pairsLeft, pairsStruckOut;
  SettingKey<1> stepsPerMmSetting;
  void describe(ResultList& results);
};

}  // namespace fettle
