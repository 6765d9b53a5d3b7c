#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct BeltTensionResults {
  ResultKey<1> frequency, tension;
  ResultKey<> difference;
  void describe(ResultList& results);
};

}  // namespace fettle
