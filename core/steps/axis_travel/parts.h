#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/machine_sheet.h"

namespace fettle {

/// A part of a drive as configured and as it would really be.
struct PartPair {
  std::string kind;  ///< "teeth", "pitch", "step_angle", "microsteps", "lead"
  double configured = 0, actual = 0;
  double ratio = 1;           ///< measured / commanded that follows
  std::string contradiction;  ///< why the sheet or the value found rules it out; empty: left
  std::string words() const;  ///< "16 teeth instead of 20"
};

/// Every pair of common parts, one part of the drive being other than configured, that explains a ratio of
/// measured to commanded travel within 0.5 %.
///
/// Ruled out: a belt's part on a screw and the reverse; a pair neither part of which is the sheet's; a pair
/// whose configured part would not give the steps per mm found (needs the other parts on the sheet). A pair
/// that only says "the sheet's part is there and another one was configured" gives way to the others.
/// Parts: belts MXL 2.032, XL 5.08, T2.5, T5, T10 and 2, 3, 5, 8 mm round-tooth (ISO 5296, DIN 7721,
/// ISO 13050); leads of metric threads (ISO 261) and trapezoidal screws (DIN 103); teeth, step angles and
/// microsteps: common practice, no source.
std::vector<PartPair> explainingPairs(double ratio, const AxisDrive& sheet,
                                      const std::optional<double>& stepsFound);

}  // namespace fettle
