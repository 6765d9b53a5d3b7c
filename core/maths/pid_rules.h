#pragma once
#include "core/maths/dead_time_model.h"

namespace fettle::maths {

/// A controller in the ideal form, Kc (1 + 1/(Ti s) + Td s).
struct PidSetting {
  double gain = 0;            ///< Kc
  double integralTime = 0;    ///< Ti, s
  double derivativeTime = 0;  ///< Td, s; 0: no derivative

  double integralGain() const { return gain / integralTime; }      ///< Ki of the parallel form
  double derivativeGain() const { return gain * derivativeTime; }  ///< Kd of the parallel form
};

// The rules are formulas: a model without gain or dead time gives numbers that are not finite, which the
// caller asks for. K, T, L stand for gain, time constant and dead time.

/// PI: Kc = T/(K (Tc + L)), Ti = min(T, 4 (Tc + L)) (Skogestad 2003, J. Process Control 13, 291).
PidSetting simcPi(const DeadTimeModel& model, double closedLoopTime);

/// PID from the answer to a step: 1.2 T/(K L), 2 L, L/2 (Ziegler and Nichols 1942, Trans. ASME 64, 759).
PidSetting zieglerNichols(const DeadTimeModel& model);

/// PID from the ultimate point: 0.6 Ku, Pu/2, Pu/8 (same source).
PidSetting zieglerNichols(const UltimatePoint& point);

/// PID: Ku/2.2, 2.2 Pu, Pu/6.3 (Tyreus and Luyben 1992, Ind. Eng. Chem. Res. 31, 2625).
PidSetting tyreusLuyben(const UltimatePoint& point);

/// PID: (0.2 + 0.45 T/L)/K, L (0.4 L + 0.8 T)/(L + 0.1 T), 0.5 L T/(0.3 L + T)
/// (Astrom and Hagglund 2004, J. Process Control 14, 635).
PidSetting amigoPid(const DeadTimeModel& model);

}  // namespace fettle::maths
