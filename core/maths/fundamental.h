#pragma once
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/spectrum.h"

namespace fettle::maths {

struct PitchSettings {
  double sampleRate = 0;      ///< Hz
  double lowest = 20;         ///< Hz, where the fundamental is looked for
  double highest = 600;       ///< Hz
  double segmentTime = 0.75;  ///< s, taken to the nearest power of two of samples
};

/// A line of the spectrum that belongs to the tone.
struct Harmonic {
  int order = 1;         ///< 1: the fundamental itself
  double frequency = 0;  ///< Hz, as it stands in the spectrum
  double level = 0;      ///< dB above the noise about it
};

/// The tone of a plucked string or belt.
struct Pitch {
  double frequency = 0;             ///< Hz, of the fundamental
  double u = 0;                     ///< standard uncertainty, Hz
  bool fundamentalHeard = true;     ///< false: known by its harmonics alone
  std::vector<Harmonic> harmonics;  ///< those heard, in rising order
  std::optional<double> rival;      ///< Hz, another fundamental that explains the lines all but as well
  PowerDensity density;             ///< what rings and dies away, up to the highest harmonic looked for
};

/// Finds the fundamental of what rings and dies away in a recording, not the loudest line.
///
/// 1. Hann segments overlapping by half; of every bin the mean over the segments less their lower quartile,
///    which takes out steady hum (with fewer than four segments: the mean). A tone that never dies is hum.
/// 2. Lines: local maxima 14 dB above the median of the density within 80 Hz of them and within 40 dB of
/// the
///    greatest; a line within four bins of one 20 dB greater is a side lobe of the window. The place of a
///    line is the top of the parabola through the logarithms of three bins, within 0.03 bins for a steady
///    tone.
/// 3. Every line over 1, 2, 3, 4 is a candidate within lowest … highest. A line is the n-th harmonic when
/// it
///    lies within 1.5 bins or 2 % of n times the candidate (stiffness raises the higher ones, Fletcher
///    1964, J. Acoust. Soc. Am. 36, 203). The score is the share of all lines' levels in dB that are
///    explained, less half the share of orders up to the highest one heard that are silent: the octave
///    below loses by its silent odd orders, the loud harmonic by the lines it leaves unexplained. A rival
///    scores at most 0.2 less and is not a part of another candidate that explains the same lines. The
///    weights and dB: no source; chosen on made signals.
/// 4. The frequency is that of the fundamental's own line, which stiffness raises least; where it is
/// silent,
///    the least-squares slope through zero of the harmonics over their orders.
///
/// u is that of a rectangle one bin wide, bin/√12, though the interpolation is finer for a steady tone: a
/// dying tone has a broad top. From harmonics alone it is (bin/√12)/√(Σ n²).
/// Errors: settings out of bounds, fewer samples than eight periods of the lowest frequency, silence, no
/// line, a sample that is no number.
Expected<Pitch> findPitch(std::span<const double> samples, const PitchSettings& settings);

}  // namespace fettle::maths
