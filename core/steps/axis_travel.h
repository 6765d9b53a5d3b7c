#pragma once
#include "core/steps/axis_travel/inputs.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// How far and how repeatably each axis moves.
///
/// Accuracy figures after ISO 230-2 (see axis_travel/accuracy.h), scale and steps per mm (see
/// axis_travel/scale.h), parts other than configured (see axis_travel/parts.h), standard deviation and
/// range of repeated homings. Figures of a scale do not apply to a delta. Refused: a row of direction 0;
/// the moves of an axis that all have one target; the scale of an axis with fewer or other moves than its
/// straight line needs.
StepResult evaluate(const AxisTravelInputs& inputs, const StepContext& context);

Step axisTravelStep();

}  // namespace fettle
