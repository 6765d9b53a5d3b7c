#pragma once
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/resonance/axis_study.h"

namespace fettle {

/// Divided density with the fitted models and modes, density of every column, vibration left by each
/// shaper over the frequency of a mode and over its own frequency, the candidates side by side.
std::vector<Chart> axisCharts(const AxisStudy& study, const ChoiceRules& rules, WorkMemory& memory);

/// Time–frequency picture of a sweep, signal of every column over time, decay after a tap.
std::vector<Chart> captureCharts(const CaptureAnalysis& capture);

/// What is shown before there is a capture.
std::vector<Chart> emptyResonanceCharts();

/// What every chart of the step says while it has nothing to draw.
std::string addACapture();

/// A value to so many significant digits: charts are stored, and nobody sees more.
double toDigits(double value, int digits);

}  // namespace fettle
