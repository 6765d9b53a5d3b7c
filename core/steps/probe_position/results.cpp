#include "core/steps/probe_position/results.h"

#include "core/measure/text.h"

namespace fettle {

void ProbePositionResults::describe(ResultList& results) {
  constexpr double change = 1.0;  // mm either way; common practice, no source
  results.quantity("probe_offset_x", offsetX, Text::tr("Probe offset x"), "mm").headline();
  results.quantity("probe_offset_y", offsetY, Text::tr("Probe offset y"), "mm").headline();
  results
      .quantity("probe_offset_x_change", changeX, Text::tr("Offset x, measured less that in force"), "mm")
      .within(-change, change);
  results
      .quantity("probe_offset_y_change", changeY, Text::tr("Offset y, measured less that in force"), "mm")
      .within(-change, change);
  results.quantity("safe_min_x", safeMinX, Text::tr("Tip may touch from x"), "mm");
  results.quantity("safe_max_x", safeMaxX, Text::tr("Tip may touch to x"), "mm");
  results.quantity("safe_min_y", safeMinY, Text::tr("Tip may touch from y"), "mm");
  results.quantity("safe_max_y", safeMaxY, Text::tr("Tip may touch to y"), "mm");
  results.quantity("points_off_bed", pointsOffBed, Text::tr("Probing points off the bed"), "1");
  results.quantity("points_in_margin", pointsInMargin, Text::tr("Probing points in the margin"), "1");
  results.quantity("points_out_of_reach", pointsOutOfReach, Text::tr("Probing points out of reach"), "1");
  results.text("points_off_bed_list", offBedList, Text::tr("Off the bed"));
  results.text("points_in_margin_list", inMarginList, Text::tr("In the margin"));
  results.text("points_out_of_reach_list", outOfReachList, Text::tr("Out of reach"));

  results.setting("probe_offset_x", offsetXSetting, Text::tr("Probe offset x"), "mm");
  results.setting("probe_offset_y", offsetYSetting, Text::tr("Probe offset y"), "mm");
  results.setting("probing_min_x", probingMinX, Text::tr("Probing grid from x"), "mm");
  results.setting("probing_max_x", probingMaxX, Text::tr("Probing grid to x"), "mm");
  results.setting("probing_min_y", probingMinY, Text::tr("Probing grid from y"), "mm");
  results.setting("probing_max_y", probingMaxY, Text::tr("Probing grid to y"), "mm");
  results.setting("probing_columns", probingColumns, Text::tr("Probing columns"), "1");
  results.setting("probing_rows", probingRows, Text::tr("Probing rows"), "1");
}

}  // namespace fettle
