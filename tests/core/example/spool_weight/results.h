#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct SpoolWeightResults {
  ResultKey<1> mass, length;
  ResultKey<> total;
  TextKey<> material;
  void describe(ResultList& results);
};

}  // namespace fettle
