#include "core/steps/mechanics/results.h"

#include "core/measure/text.h"

namespace fettle {

void MechanicsResults::describe(ResultList& results) {
  results.name("axis", {{"x", "x"}, {"y", "y"}, {"z", "z"}});
  results.quantity("checks_done", checksDone, Text::tr("Checks answered"), "1");
  results.quantity("checks_open", checksOpen, Text::tr("Checks open"), "1");
  results.quantity("checks_failed", checksFailed, Text::tr("Checks not in order"), "1")
      .headline()
      .within(std::nullopt, 0.0);
  results
      .quantity("<face>.diagonal_difference", difference, Text::tr("Diagonals, one less the other"), "mm")
      .headline()
      .judged();
  results.quantity("<axis>.drag_N", drag, Text::tr("Mean drag"), "N");
  results.quantity("<axis>.drag_spread", dragSpread, Text::tr("Drag, greatest less least over mean"), "1")
      .within(std::nullopt, 0.30);  // common practice, no source
}

}  // namespace fettle
