#pragma once
#include "core/steps/resonance/analysis.h"

namespace fettle {

/// Noise floor of the fitted signal and the density the modes are fitted to: floor = median of the density
/// above 1.3 × the end of the sweep, or of the top fifth where that leaves nothing; it is subtracted, what
/// falls below 0 is 0, and a constant-velocity excitation is divided by f². Sets the range of the fit: of a
/// sweep of rate r only from + r·T to to − r·T, T the time of a segment.
void divideDensity(CaptureAnalysis& analysis);

/// Modes of a sweep or run: all fitted together and coherently to the divided density. Starts are its peaks
/// whose prominence is at least half their height, where the undivided density is ten times the floor; at
/// most the seven highest. A mode counts when its standard errors are under 5 % of f and 50 % of ζ.
void fitCaptureModes(CaptureAnalysis& analysis);

/// Modes of a tap: a sum of damped sines (at most four) with the same limits.
void fitDecay(CaptureAnalysis& analysis);

}  // namespace fettle
