#pragma once
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/maths/damped_sines.h"
#include "core/maths/modes.h"
#include "core/maths/time_frequency.h"
#include "core/steps/contract/chart.h"
#include "core/steps/resonance/inputs.h"
#include "core/steps/resonance/measured_mode.h"
#include "core/steps/resonance/sampling.h"

namespace fettle {

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

}  // namespace fettle
