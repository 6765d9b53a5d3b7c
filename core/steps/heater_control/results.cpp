#include "core/steps/heater_control/results.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/heater_control/published_rules.h"

namespace fettle {

void HeaterControlResults::describe(ResultList& results) {
  results.name("heater", heaterChoices());
  results.name("rule", ruleNames());
  results.quantity("<heater>.gain_C", gain, Text::tr("Gain, °C at full duty"), "C").headline();
  results.quantity("<heater>.tau_s", timeConstant, Text::tr("Time constant"), "s");
  results.quantity("<heater>.theta_s", deadTime, Text::tr("Dead time"), "s");
  results.quantity("<heater>.Ku", ultimateGain, Text::tr("Ultimate gain, duty per °C"), "1/C");
  results.quantity("<heater>.Pu", ultimatePeriod, Text::tr("Ultimate period"), "s").headline();
  results.text("<heater>.proposed", proposed, Text::tr("Proposed rule")).words(ruleNames());
  results.text("<heater>.reason", reason, Text::tr("Because"));
  results.quantity("<heater>.held_s", held, Text::tr("Held within ±1 °C"), "s")
      .headline()
      .within(holdEnough, std::nullopt);
  results.quantity("<heater>.overshoot_C", overshoot, Text::tr("Overshoot"), "C");
  results.quantity("<heater>.settling_s", settling, Text::tr("Settling time"), "s");
  results.quantity("<heater>.mean_error_C", meanError, Text::tr("Mean error"), "C");
  results.quantity("<heater>.s_C", scatter, Text::tr("Standard deviation"), "C");
  results.quantity("<heater>.peak_to_peak_C", peakToPeak, Text::tr("Peak to peak"), "C");
  results.quantity("<heater>.slope_C_per_min", slope, Text::tr("Drift"), "C/min");
  results.quantity("<heater>.greatest_fall_C", greatestFall, Text::tr("Greatest fall below target"), "C");
  results.quantity("<heater>.slowest_rise_C", slowestRise, Text::tr("Slowest rise at full duty"), "C");
  results.quantity("<heater>.guard_rise_C", guardRise, Text::tr("Rise a runaway guard may ask for"), "C");
  describeRules(results);
  results.setting("<heater>.Kp", proportionalSetting, Text::tr("Proportional gain"), "1/C");
  results.setting("<heater>.Ki", integralSetting, Text::tr("Integral gain"), "1/(C s)");
  results.setting("<heater>.Kd", derivativeSetting, Text::tr("Derivative gain"), "s/C");
}

void HeaterControlResults::describeRules(ResultList& results) {
  const auto add = [&](const char* id, ResultKey<2>& key, std::string label, const char* unit) {
    results.quantity(std::string("<heater>.<rule>.") + id, key, std::move(label), unit);
  };
  add("Kc", idealGain, Text::tr("Gain, duty per °C"), "1/C");
  add("Ti_s", integralTime, Text::tr("Integral time"), "s");
  add("Td_s", derivativeTime, Text::tr("Derivative time"), "s");
  add("Kp", proportional, Text::tr("Kp, duty 0 to 1"), "1/C");
  add("Ki", integral, Text::tr("Ki, duty 0 to 1"), "1/(C s)");
  add("Kd", derivative, Text::tr("Kd, duty 0 to 1"), "s/C");
  add("Kp_at_full_scale", proportionalAtFullScale, Text::tr("Kp at full scale"), "1/C");
  add("Ki_at_full_scale", integralAtFullScale, Text::tr("Ki at full scale"), "1/(C s)");
  add("Kd_at_full_scale", derivativeAtFullScale, Text::tr("Kd at full scale"), "s/C");
  add("Kp_per_sample", proportionalPerSample, Text::tr("Kp per sample"), "1/C");
  add("Ki_per_sample", integralPerSample, Text::tr("Ki per sample"), "1/C");
  add("Kd_per_sample", derivativePerSample, Text::tr("Kd per sample"), "1/C");
  add("overshoot_C", simulatedOvershoot, Text::tr("Simulated overshoot"), "C");
  add("settling_s", simulatedSettling, Text::tr("Simulated settling time"), "s");
  add("dip_C", dip, Text::tr("Simulated dip under the fan"), "C");
}

}  // namespace fettle
