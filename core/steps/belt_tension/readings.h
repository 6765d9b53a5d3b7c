#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/maths/fundamental.h"
#include "core/steps/belt_tension/inputs.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// What was found in a recording.
struct HeardPitch {
  std::size_t row = 0;
  std::string belt;
  maths::Pitch pitch;
};

/// All that was read of one belt.
struct BeltReadings {
  std::string id;                ///< begins its result names
  std::string name;              ///< as typed first
  std::optional<double> length;  ///< of its own rows, mm
  std::vector<double> frequencies;
  std::vector<double> u;           ///< of each from its resolution, Hz
  std::vector<std::size_t> rows;   ///< as the user counts; recordings after plucks
  std::size_t typed = 0;           ///< how many of them are plucks
  std::optional<Refusal> refused;  ///< why the belt cannot be used
  Name named() const { return {id, name}; }
};

/// The fundamental of every recording that counts; one without a tone is a finding `no-tone`, one with two
/// explanations `pitch-unclear`. A recording that is unevenly sampled or too short is refused by itself.
std::vector<HeardPitch> heardPitches(StepResult& result, const std::vector<BeltRecording>& recordings,
                                     double from, double to);

/// The belts in the order they are first named. One with two lengths is refused.
std::vector<BeltReadings> beltsOf(const std::vector<Pluck>& plucks,
                                  const std::vector<BeltRecording>& recordings,
                                  const std::vector<HeardPitch>& heard, const Instrument& reading);

/// Mean of n frequencies: u² = s²/n + Σu²/n² with each reading's resolution (r/√12 typed, from the spectrum
/// heard), and the share of typed readings times e/√3.
Quantity frequencyOf(const BeltReadings& belt, const Instrument& reading);

}  // namespace fettle
