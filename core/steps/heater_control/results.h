#pragma once
#include "core/steps/contract/result_list.h"

namespace fettle {

/// How long a target is to be held within ±1 °C, s; common practice, no source.
inline constexpr double holdEnough = 120;

/// Results of one heater; the keys of two names are those of a rule.
struct HeaterControlResults {
  ResultKey<1> gain, timeConstant, deadTime, ultimateGain, ultimatePeriod;
  ResultKey<1> overshoot, settling, meanError, scatter, peakToPeak, slope, greatestFall, held;
  ResultKey<1> slowestRise, guardRise;
  TextKey<1> proposed, reason;
  ResultKey<2> idealGain, integralTime, derivativeTime;
  ResultKey<2> proportional, integral, derivative;
  ResultKey<2> proportionalAtFullScale, integralAtFullScale, derivativeAtFullScale;
  ResultKey<2> proportionalPerSample, integralPerSample, derivativePerSample;
  ResultKey<2> simulatedOvershoot, simulatedSettling, dip;
  SettingKey<1> proportionalSetting, integralSetting, derivativeSetting;
  void describe(ResultList& results);

 private:
  void describeRules(ResultList& results);
};

}  // namespace fettle
