#pragma once
#include <QString>

#include "core/steps/contract/step.h"

namespace fettle::ui {

/// The headline values of a step in a few characters: "12.5 mm³/s", "31.4, −8.2 mm".
QString headlineOf(const Step& step, const StepResult& result);

/// How many findings of that severity a result has.
int countFindings(const StepResult& result, Severity severity);

}  // namespace fettle::ui
