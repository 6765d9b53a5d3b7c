#pragma once
#include <optional>
#include <string>

#include "core/fields/field_list.h"
#include "core/steps/contract/heaters.h"

namespace fettle {

/// A log of one heater, or the numbers of a model somebody else found, and what its control should do.
struct HeaterControlInputs : HeaterInput {
  std::string mode;                                     ///< "step", "relay", "hold"
  CapturePointer log;                                   ///< time_s, temp_C and where known duty, target_C
  std::optional<double> maximum;                        ///< °C; blank: the sheet's
  std::optional<double> stepAt, dutyBefore, dutyAfter;  ///< of a step, where the log has no duty
  std::optional<double> dutyLow, dutyHigh;              ///< of a relay, where the log has no duty
  std::optional<double> hysteresis;                     ///< half band of the relay, °C
  std::optional<double> gain, timeConstant, deadTime;   ///< typed instead of a step's log
  std::optional<double> ultimateGain, ultimatePeriod;   ///< typed instead of a relay's log
  std::optional<double> closedLoopTime;                 ///< of simc; blank: the dead time
  std::optional<double> outputFullScale, period;
  double room = 25;
  std::optional<double> target;
  double fanDuty = 0.10;             ///< common practice, no source
  std::optional<double> riseWindow;  ///< s; blank: 15 for the hot end, 90 for the bed, 300 for a chamber

  void describe(FieldList& fields);

 private:
  void describeTests(FieldList& fields);
  void describeControl(FieldList& fields);
  void describeTyped(FieldList& fields);
};

}  // namespace fettle
