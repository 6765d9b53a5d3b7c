#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct MechanicsResults {
  ResultKey<> checksDone, checksOpen, checksFailed;
  ResultKey<1> difference;        ///< of a face
  ResultKey<1> drag, dragSpread;  ///< of an axis
  void describe(ResultList& results);
};

}  // namespace fettle
