#pragma once
#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/fields/field_list.h"
#include "core/maths/damped_sines.h"
#include "core/maths/modes.h"
#include "core/maths/time_frequency.h"
#include "core/steps/contract/chart.h"
#include "core/steps/resonance/measured_mode.h"
#include "core/steps/resonance/sampling.h"

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

/// A column along an axis of the machine.
struct MachineSignal {
  std::string axis;             ///< "x", "y", "z", or "p", "q" along a belt diagonal
  std::vector<double> samples;  ///< mm/s²
  std::vector<double> density;  ///< (mm/s²)²/Hz; empty when no stretch holds a segment
};

/// What a tap left behind, from just after the blow.
struct Decay {
  std::vector<double> time, samples;  ///< s from the blow, mm/s²
  maths::DampedSinesFit fit;
};

/// Everything that is found in one capture by itself.
struct CaptureAnalysis {
  VibrationCapture row;
  std::string id;     ///< "x.centre", begins the names of its results
  std::string label;  ///< for sentences and charts: "x centre, 2 kg spool"
  Sampling sampling;
  std::vector<std::string> clipped;  ///< sensor columns that stand at their limit
  maths::SegmentSettings segments;
  std::vector<MachineSignal> records;  ///< the fitted one first
  std::vector<double> frequency;       ///< Hz, of all densities
  double floor = 0;                    ///< of the fitted signal's density
  std::vector<double> divided;         ///< what the modes are fitted to
  bool byFrequencySquared = false;     ///< how `divided` was divided
  maths::Interval range{0, 0};         ///< Hz, where the modes are fitted
  std::optional<maths::ModalModel> model;
  std::optional<Decay> decay;  ///< of a tap
  ModeSet modes;
  std::string whyNoMode;  ///< one clause; empty when there are modes
  std::optional<maths::TimeFrequencyPicture> picture;
  std::vector<Chart> charts;  ///< picture, decay, signal: what is drawn of this capture alone

  const MachineSignal& fitted() const { return records.front(); }
  /// Proposals rest on captures with modes that are not clipped.
  bool usable() const { return !modes.modes.empty() && clipped.empty(); }
};

using AnalysisPointer = std::shared_ptr<const CaptureAnalysis>;

/// `name` is the position in result names. Examines the sampling, makes the densities and fits the modes of
/// one capture, whose columns are in mm/s² and s. `segmentTime` in s is taken to the nearest power of two
/// of samples. `pictureCells` bounds the time–frequency picture of a sweep. Throws Refusal for rows that
/// contradict themselves or hold too few samples, Cancelled when `progress` says so.
///
/// Where the handbook is silent: a capture that is no sweep is fitted from 5 Hz to 200 Hz or 0.4 × fs, the
/// lower one (nothing above troubles a print). A tap's decay begins 5 ms after its greatest sample, when
/// the hammer has left (common practice, no source), and ends with its stretch or after a second and a
/// quarter; its sines' amplitudes over their sum stand in the place of the coefficients c_k.
CaptureAnalysis analyseCapture(const VibrationCapture& row, const std::string& name, double segmentTime,
                               std::size_t pictureCells, const maths::Progress& progress);

}  // namespace fettle
