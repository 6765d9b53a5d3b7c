#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

struct BedShapeResults {
  ResultKey<> flatnessMinimumZone, flatnessLeastSquares, rms, rangeRaw;
  ResultKey<> tiltX, tiltY, bowX, bowY, twist;
  ResultKey<> edgeDrop, densityError;
  ResultKey<> proposedSpacing, proposedColumns, proposedRows;
  void describe(ResultList& results);
};

}  // namespace fettle
