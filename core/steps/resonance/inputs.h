#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// One recording of a vibration sensor.
struct VibrationCapture : TableRow {
  std::string axis, position;
  std::string direction;       ///< of the motion: x, y, p, q; blank: that of the axis
  std::string kind = "sweep";  ///< or tap, run
  std::string load;
  std::string excitation;  ///< flat, constant-velocity, tap, unknown; blank: as the kind has it
  std::optional<double> sweepFrom, sweepTo, sweepTime;
  std::string sensorX = "ax", sensorY = "ay", sensorZ = "az";
  CapturePointer capture;

  void describe(FieldList& fields);
  std::string movesAlong() const { return direction.empty() ? axis : direction; }
  std::string excitedBy() const;
  bool isSweep() const { return kind == "sweep"; }
  bool isTap() const { return kind == "tap"; }
  friend bool operator==(const VibrationCapture&, const VibrationCapture&) = default;
  /// Hz/s
  double sweepRate() const { return (*sweepTo - *sweepFrom) / *sweepTime; }
};

/// Ripples counted on a printed wall behind a corner.
struct RippleRow : TableRow {
  std::string axis;
  std::optional<double> speed, count, distance;
  std::string amplitudes;  ///< mm, crest after crest, "0.12 0.09 0.07"

  void describe(FieldList& fields);
};

/// What rings on each axis, and the input shaper and acceleration that leave little of it in a print.
struct ResonanceInputs {
  std::vector<VibrationCapture> captures;
  std::vector<RippleRow> ripples;
  double segmentTime = 1.28;         ///< s
  double designDamping = 0.05;       ///< common practice, no source
  double frequencyAllowance = 0.05;  ///< share of a mode's frequency
  double residualLimit = 0.05;
  double pathDeviation = 0.1;  ///< mm

  void describe(FieldList& fields);
};

}  // namespace fettle
