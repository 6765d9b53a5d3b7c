#include "core/steps/axis_travel/results.h"

#include "core/measure/text.h"

namespace fettle {

void AxisTravelResults::describe(ResultList& results) {
  results.quantity("<axis>.repeatability", repeatability, Text::tr("Repeatability R"), "mm")
      .headline()
      .judged();
  results.quantity("<axis>.reversal", reversal, Text::tr("Reversal B"), "mm").headline().judged();
  results.quantity("<axis>.scale_error", scaleError, Text::tr("Scale error, measured / commanded − 1"), "1")
      .headline()
      .judged();
  results.quantity("<axis>.reversal_mean", reversalMean, Text::tr("Mean reversal"), "mm");
  results
      .quantity("<axis>.systematic_deviation", systematicDeviation, Text::tr("Systematic deviation E"),
                "mm")
      .judged();
  results.quantity("<axis>.mean_deviation", meanDeviation, Text::tr("Mean deviation M"), "mm").judged();
  results.quantity("<axis>.accuracy", accuracy, Text::tr("Accuracy A"), "mm").judged();
  results.quantity("<axis>.travel_ratio", travelRatio, Text::tr("Measured / commanded"), "1");
  results.quantity("<axis>.steps_per_mm", stepsPerMm, Text::tr("Steps per mm"), "1/mm");
  results.quantity("<axis>.homing_s", homingSpread, Text::tr("Homing, standard deviation"), "mm").judged();
  results.quantity("<axis>.homing_range", homingRange, Text::tr("Homing, range"), "mm").judged();
  results.text("<axis>.pairs_left", pairsLeft, Text::tr("Parts that would explain it"));
  results.text("<axis>.pairs_struck_out", pairsStruckOut, Text::tr("Struck out"));
  results.setting("<axis>.steps_per_mm", stepsPerMmSetting, Text::tr("Steps per mm"), "1/mm");
}

}  // namespace fettle
