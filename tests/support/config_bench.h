#pragma once
#include <QTest>
#include <cmath>
#include <numbers>

#include "core/steps/catalogue.h"
#include "core/steps/config_review/review.h"
#include "core/steps/config_review/settings.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"

namespace fettle::tests {

/// Bed 0 … 300 mm within a travel of 0 … 310 mm, 250 mm high; belts of 2 mm on 20 teeth, a screw of 8 mm
/// lead, 1.8° and 16 microsteps: by hand 3200/40 = 80 and 3200/8 = 400 steps per mm.
inline StepContext bench() {
  StepContext context;
  MachineSheet& sheet = context.sheet;
  sheet.travelMinX = sheet.travelMinY = sheet.travelMinZ = 0;
  sheet.travelMaxX = sheet.travelMaxY = 310;
  sheet.travelMaxZ = 250;
  sheet.bedMinX = sheet.bedMinY = 0;
  sheet.bedMaxX = sheet.bedMaxY = 300;
  sheet.hotEndMax = 300;
  sheet.bedMax = 110;
  for (AxisDrive* axis : {&sheet.x, &sheet.y, &sheet.z}) {
    axis->drive = "belt";
    axis->pitch = 2;
    axis->teeth = 20;
    axis->stepAngle = 1.8;
    axis->microsteps = 16;
    axis->motorCurrent = 1.2;
    axis->motorRated = 1.5;
    axis->currentIs = "rms";
  }
  sheet.z.drive = "screw";
  sheet.z.lead = 8;
  for (const auto& [id, value] : {std::pair{"x.steps_per_mm", 80.0},
                                  {"y.steps_per_mm", 80.0},
                                  {"z.steps_per_mm", 400.0},
                                  {"probe_offset_x", -10.0},
                                  {"probe_offset_y", 5.0},
                                  {"probing_min_x", 10.0},
                                  {"probing_max_x", 290.0},
                                  {"probing_min_y", 10.0},
                                  {"probing_max_y", 290.0},
                                  {"travel_max_x", 310.0},
                                  {"x.top_speed", 300.0},
                                  {"x.acceleration", 3000.0},
                                  {"hot_end_max_C", 300.0},
                                  {"bed_max_C", 110.0}}) {
    context.asFound[id] = {value, {}};
  }
  return context;
}

inline Json row(const char* name, const Json& value, const char* setting) {
  return {{"name", name}, {"value", value}, {"setting", setting}};
}

inline StepContext with(StepContext context, const std::string& id, double value) {
  context.asFound[id] = {value, {}};
  return context;
}

inline bool says(const Finding* finding, const char* words) {
  return finding && finding->text.find(words) != std::string::npos;
}

inline const SettingProposal* proposalOf(const StepResult& result, const std::string& id) {
  for (const auto& proposal : result.settings) {
    if (proposal.id == id) {
      return &proposal;
    }
  }
  return nullptr;
}

}  // namespace fettle::tests
