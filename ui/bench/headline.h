#pragma once
#include <QString>

#include "core/steps/contract/step.h"

namespace fettle::ui {

/// The headline of a step in a few characters, of values in one unit: "12.5 mm³/s", "31.4, −8.2 mm"; empty
/// where there are none, or too many to tell anything.
QString headlineOf(const Step& step, const StepResult& result);

/// How many findings of that severity a result has.
int countFindings(const StepResult& result, Severity severity);

/// "1 fault", "2 faults".
QString faultsInWords(int faults);

}  // namespace fettle::ui
