#pragma once
#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/safety/circuits.h"
#include "tests/support/bed_nets.h"
#include "tests/support/described.h"
#include "tests/support/near.h"
#include "tests/support/step_bench.h"

namespace fettle::tests {

inline Json safetyTicked() {
  Json checks = Json::array();
  for (const char* item : {"mains_lead", "earth_bond", "strain_relief", "fuses", "heater_clamped", "guards",
                           "emergency_stop", "smoke_alarm", "ventilation", "attended"}) {
    checks.push_back({{"item", item}, {"ok", true}, {"initials", "AB"}, {"time", "09:10"}});
  }
  return checks;
}

inline Json& answer(Json& inputs, const char* item) {
  for (auto& line : inputs["checks"]) {
    if (line["item"] == item) {
      return line;
    }
  }
  qFatal("no item %s", item);
}

/// All ticked; 14.4 Ω at 24 V: 40 W by hand.
inline Json safetyInOrder() {
  return {{"checks", safetyTicked()},
          {"earth", {{{"part", "Frame"}, {"ohm", 0.04}}, {{"part", "Bed plate"}, {"ohm", 0.06}}}},
          {"heaters", {{{"heater", "hot_end"}, {"ohm", 14.4}, {"volt", 24}, {"rated_W", 40}}}},
          {"other_W", 60},
          {"circuits", {{{"name", "Bed"}, {"fuse_A", 10}, {"wire_mm2", 1.5}, {"load_A", 8}}}}};
}

inline StepContext benchWithSupply() {
  StepContext context;
  context.sheet.supplyVoltage = 24;
  context.sheet.supplyPower = 350;
  return context;
}

}  // namespace fettle::tests
