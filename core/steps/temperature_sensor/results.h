#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct TemperatureSensorResults {
  ResultKey<1> largestDeviation, offset, slope, biasFactor, biasOhm;
  TextKey<1> likelyCurves;
  SettingKey<1> sensorCurve;
  void describe(ResultList& results);
};

}  // namespace fettle
