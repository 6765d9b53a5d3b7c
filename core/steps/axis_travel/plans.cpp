#include "core/steps/axis_travel/plans.h"

#include <cmath>
#include <optional>

#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double clearOfEnds = 10;  // mm; common practice, no source

struct Travel {
  const char* axis;
  std::optional<double> low, high;
};

/// Targets at uneven parts of the travel, to 0.1 mm.
std::vector<double> targetsOf(const Travel& travel, std::size_t count) {
  constexpr double unevenness[] = {0, 0.07, -0.05, 0.06, 0};  // of the distance of even targets
  const double first = *travel.low + clearOfEnds;
  const double step = (*travel.high - clearOfEnds - first) / static_cast<double>(count - 1);
  std::vector<double> targets;
  for (std::size_t i = 0; i < count; ++i) {
    const double shift = count == std::size(unevenness) ? unevenness[i] * step : 0;
    targets.push_back(std::round(10 * (first + step * static_cast<double>(i) + shift)) / 10);
  }
  return targets;
}

/// Each run goes up over all targets and down again.
Json movesFor(const StepContext& context, std::size_t targets, int runs) {
  const MachineSheet& sheet = context.sheet;
  Json rows = Json::array();
  for (const Travel& travel :
       {Travel{"x", sheet.travelMinX, sheet.travelMaxX}, Travel{"y", sheet.travelMinY, sheet.travelMaxY},
        Travel{"z", sheet.travelMinZ, sheet.travelMaxZ}}) {
    if (!travel.low || !travel.high || *travel.high - *travel.low <= 3 * clearOfEnds) {
      continue;
    }
    const auto up = targetsOf(travel, targets);
    for (int run = 0; run < runs; ++run) {
      for (auto target = up.begin(); target != up.end(); ++target) {
        rows.push_back({{"axis", travel.axis}, {"target_mm", *target}, {"direction", 1}});
      }
      for (auto target = up.rbegin(); target != up.rend(); ++target) {
        rows.push_back({{"axis", travel.axis}, {"target_mm", *target}, {"direction", -1}});
      }
    }
  }
  return rows;
}

}  // namespace

std::vector<EntryPlan> travelPlans() {
  return {{"standard", Text::tr("Five targets, five runs (ISO 230-2)"), "moves",
           [](const Json&, const StepContext& context) { return movesFor(context, 5, 5); }},
          {"short", Text::tr("Three targets, two runs"), "moves",
           [](const Json&, const StepContext& context) { return movesFor(context, 3, 2); }}};
}

}  // namespace fettle
