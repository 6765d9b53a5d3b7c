#include "core/steps/belt_tension/results.h"

#include "core/measure/text.h"

namespace fettle {

void BeltTensionResults::describe(ResultList& results) {
  results.quantity("<belt>.tension_N", tension, Text::tr("Tension"), "N").headline().judged();
  results.quantity("<belt>.frequency_hz", frequency, Text::tr("Frequency"), "Hz");
  results
      .quantity("tension_difference", difference, Text::tr("Difference of the two belts over their mean"),
                "1")
      .within(-0.10, 0.10);  // common practice, no source
}

}  // namespace fettle
