#pragma once
#include <string>

#include "core/steps/resonance/analysis.h"

namespace fettle {

/// `name` is the position in result names. Examines the sampling, makes the densities and fits the modes of
/// one capture, whose columns are in mm/s² and s. `segmentTime` in s is taken to the nearest power of two
/// of samples. `pictureCells` bounds the time–frequency picture of a sweep. Throws Refusal for rows that
/// contradict themselves or hold too few samples, Cancelled when `progress` says so.
///
/// A capture that is no sweep is fitted from 5 Hz to 200 Hz or 0.4 × fs, the
/// lower one (nothing above troubles a print; common practice, no source). A tap's decay begins 5 ms after
/// its greatest sample, when the hammer has left (common practice, no source), and ends with its stretch or
/// after a second and a quarter; its sines' amplitudes over their sum stand in the place of the
/// coefficients c_k.
CaptureAnalysis analyseCapture(const VibrationCapture& row, const std::string& name, double segmentTime,
                               std::size_t pictureCells, const maths::Progress& progress);

}  // namespace fettle
