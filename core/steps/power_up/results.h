#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

inline constexpr double restLimit = 3;  ///< °C either way; common practice, no source

struct PowerUpResults {
  ResultKey<> faults, devicesWrong, trip;
  ResultKey<1> restDeviation, rate, riseInWindow, riseLimit;  ///< of a heater
  void describe(ResultList& results);
};

}  // namespace fettle
