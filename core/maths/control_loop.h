#pragma once
#include <optional>
#include <vector>

#include "core/maths/dead_time_model.h"
#include "core/maths/pid_rules.h"

namespace fettle::maths {

/// A controller and a model with dead time in a closed loop, sampled.
struct ControlLoop {
  DeadTimeModel plant;
  PidSetting controller;
  double rest = 0;                 ///< output at which the plant rests with no input; the loop starts there
  double target = 0;               ///< from time 0 on
  double period = 0.1;             ///< s between samples of the controller, above zero
  double lowest = 0, highest = 1;  ///< limits of what the controller can ask for
  /// Taken from what the controller asks for, from a time on: a load at the input.
  double load = 0;
  double loadFrom = 0;
};

struct LoopResponse {
  std::vector<double> time, output, asked;  ///< asked: what the controller gave, within its limits
};

/// The loop from time 0 to `duration`. The plant is discretised exactly for an input that is held over each
/// period, any dead time (Astrom and Wittenmark 1997, Computer-Controlled Systems, 2.3). The controller:
/// proportional and integral on target less output; the integral (rectangles) is held while the controller
/// is at a limit and the error would drive it further; the derivative acts on the output alone through a
/// lag of Td/10, exact for an output that runs straight between samples.
/// A controller without a positive integral time has no integral.
LoopResponse simulateLoop(const ControlLoop& loop, double duration);

/// First time after the last sample, up to `until`, that is further than `band` from the target; 0 when
/// none is. None when the last sample up to then is outside, or there is no sample.
std::optional<double> settledFrom(const LoopResponse& response, double target, double band, double until);

}  // namespace fettle::maths
