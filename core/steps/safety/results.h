#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

inline constexpr double earthLimit = 0.1;  ///< ohm; IEC 61010-1, from memory

struct SafetyResults {
  ResultKey<> criticalOpen, openItems;
  TextKey<> openList;
  ResultKey<1> earth;                                     ///< of a part
  ResultKey<1> power, workingPower, current, powerRatio;  ///< of a heater
  ResultKey<> supplyPower, supplyLoad;
  ResultKey<1> wireLimit, fuseMargin, loadMargin;  ///< of a circuit
  void describe(ResultList& results);
};

}  // namespace fettle
