#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct ProbePositionResults {
  ResultKey<> offsetX, offsetY, changeX, changeY;
  ResultKey<> safeMinX, safeMaxX, safeMinY, safeMaxY;
  ResultKey<> pointsOffBed, pointsInMargin, pointsOutOfReach;
  TextKey<> offBedList, inMarginList, outOfReachList;
  SettingKey<> offsetXSetting, offsetYSetting;
  SettingKey<> probingMinX, probingMaxX, probingMinY, probingMaxY, probingColumns,
      probingRows;  ///< read, not proposed
  void describe(ResultList& results);
};

}  // namespace fettle
