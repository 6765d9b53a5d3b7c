#include "core/steps/filament_feed/results.h"

#include "core/measure/text.h"

namespace fettle {

void FilamentFeedResults::describe(ResultList& results) {
  results.quantity("feed_steps_per_mm", feed, Text::tr("Feed steps per mm"), "1/mm").headline();
  results.quantity("drawn_ratio", drawnRatio, Text::tr("Drawn / commanded"), "1").judged();
  results.quantity("speed_<k>.speed", speed, Text::tr("Speed"), "mm/s");
  results.quantity("speed_<k>.drawn_ratio", ratioAtSpeed, Text::tr("Drawn / commanded"), "1");
  results.quantity("speed_<k>.slip", slip, Text::tr("Slip, share of what the slowest speed draws"), "1");
  results.quantity("diameter_mean", diameterMean, Text::tr("Filament diameter"), "mm").judged();
  results.quantity("ovality", ovality, Text::tr("Ovality"), "mm").judged();
  results.quantity("flow_effect", flowEffect, Text::tr("Flow above nominal / nominal"), "1");
  results.quantity("moisture_lost", moistureLost, Text::tr("Mass lost by drying"), "%");
  results.setting("feed_steps_per_mm", feedSetting, Text::tr("Feed steps per mm"), "1/mm");
}

}  // namespace fettle
