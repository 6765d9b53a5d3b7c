#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct ResonanceResults {
  ResultKey<3> positionModeHz, positionModeDamping;
  ResultKey<2> modeHz, modeDamping;
  TextKey<1> decidingPosition;
  ResultKey<1> rippleHz;
  /// Of each shaper on an axis:
  ResultKey<2> frequency, residual, bandLow, bandHigh, duration, sigma, accelerationLimit, cornerSpeedLimit;
  TextKey<2> shaperReason;
  TextKey<1> proposed, reason;
  SettingKey<1> shaperSetting, shaperHzSetting, accelerationSetting;
  void describe(ResultList& results);
};

}  // namespace fettle
