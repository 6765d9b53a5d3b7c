#include "core/steps/resonance/results.h"

#include "core/measure/text.h"
#include "core/steps/resonance/choice.h"

namespace fettle {
namespace {

std::vector<Choice> shaperWords() {
  std::vector<Choice> words;
  for (const auto kind : maths::shaperKinds) {
    words.push_back({std::string(maths::shaperKey(kind)), shaperLabel(kind)});
  }
  return words;
}

}  // namespace

void ResonanceResults::describe(ResultList& results) {
  results.name("shaper", shaperWords());
  results.quantity("<axis>.mode_<k>_hz", modeHz, Text::tr("Frequency of a mode"), "Hz").headline().judged();
  results.quantity("<axis>.mode_<k>_damping", modeDamping, Text::tr("Damping ratio of a mode"), "1");
  results.quantity("<axis>.<position>.mode_<k>_hz", positionModeHz,
                   Text::tr("Frequency of a mode at a position"), "Hz");
  results.quantity("<axis>.<position>.mode_<k>_damping", positionModeDamping,
                   Text::tr("Damping ratio of a mode at a position"), "1");
  results.text("<axis>.deciding_position", decidingPosition, Text::tr("Position that decides"));
  results.quantity("<axis>.ripple_hz", rippleHz, Text::tr("Frequency of printed ripples"), "Hz");
  results.quantity("<axis>.<shaper>.frequency_hz", frequency, Text::tr("Frequency of the shaper"), "Hz");
  results.quantity("<axis>.<shaper>.residual", residual,
                   Text::tr("Vibration left at worst / without shaper"), "1");
  results.quantity("<axis>.<shaper>.band_low_hz", bandLow, Text::tr("Lower end of its 5 % band"), "Hz");
  results.quantity("<axis>.<shaper>.band_high_hz", bandHigh, Text::tr("Upper end of its 5 % band"), "Hz");
  results.quantity("<axis>.<shaper>.duration_s", duration, Text::tr("Length of the shaper"), "s");
  results.quantity("<axis>.<shaper>.sigma_s", sigma, Text::tr("Spread of the shaper in time"), "s");
  results.quantity("<axis>.<shaper>.acceleration_limit", accelerationLimit, Text::tr("Acceleration limit"),
                   "mm/s2");
  results.quantity("<axis>.<shaper>.corner_speed_limit", cornerSpeedLimit, Text::tr("Corner speed limit"),
                   "mm/s");
  results.text("<axis>.<shaper>.reason", shaperReason, Text::tr("Why, or why not"));
  results.text("<axis>.proposed", proposed, Text::tr("Proposed shaper")).words(shaperWords());
  results.text("<axis>.reason", reason, Text::tr("Reason"));
  results.setting("<axis>.shaper", shaperSetting, Text::tr("Input shaper"), "")
      .disturbs("shaper_adopted")
      .words(shaperWords());
  results.setting("<axis>.shaper_hz", shaperHzSetting, Text::tr("Frequency of the shaper"), "Hz")
      .disturbs("shaper_adopted");
  results.setting("<axis>.acceleration", accelerationSetting, Text::tr("Acceleration"), "mm/s2")
      .disturbs("shaper_adopted");
}

}  // namespace fettle
