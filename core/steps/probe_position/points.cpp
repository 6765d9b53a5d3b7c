#include "core/steps/probe_position/points.h"

#include <algorithm>
#include <utility>

#include "core/fields/field_reader.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/probe_position/results.h"

namespace fettle {
namespace {

/// A number of the grid, with the place where it can be put right.
struct GridNumber {
  double value = 0;
  std::string at;
};

void refuseUnlessBelow(const GridNumber& low, const GridNumber& high, const char* axis) {
  if (low.value >= high.value) {
    throw Refusal{say(Text::tr("Probing grid {0}: it begins at {1} mm and ends at {2} mm; the beginning "
                               "must be below the end."),
                      axis, formatNumber(low.value), formatNumber(high.value)),
                  low.at};
  }
}

int wholeLines(const GridNumber& lines, const Field& field) {
  const AcceptedNumbers counts = numbersOf(field);
  if (!counts.has(lines.value)) {
    throw Refusal{field.label + ": " + counts.notPossible(formatNumber(lines.value)), lines.at};
  }
  return static_cast<int>(lines.value);
}

std::string placeText(const Landing& landing) {
  return say(Text::tr("column {0}, row {1} at {2}, {3}"), landing.column, landing.row,
             formatFixed(landing.real.x, 1), formatFixed(landing.real.y, 1));
}

std::string listed(const std::vector<Landing>& places) {
  std::string text;
  for (const auto& place : places) {
    text += (text.empty() ? "" : "; ") + placeText(place);
  }
  return text;
}

std::vector<Landing> chosen(const std::vector<Landing>& all, bool Landing::*mark) {
  std::vector<Landing> some;
  std::copy_if(all.begin(), all.end(), std::back_inserter(some),
               [&](const Landing& landing) { return landing.*mark; });
  return some;
}

void giveCount(StepResult& result, const ResultId& count, const TextId& list,
               const std::vector<Landing>& wrong) {
  result.give(count, static_cast<double>(wrong.size()));
  if (!wrong.empty()) {
    result.give(list, listed(wrong));
  }
}

const Landing& farthestOut(const std::vector<Landing>& places) {
  return *std::min_element(places.begin(), places.end(),
                           [](const Landing& a, const Landing& b) { return a.insideBy < b.insideBy; });
}

void countOffBed(StepResult& result, const std::vector<Landing>& all) {
  const auto& key = keysOf<ProbePositionResults>();
  const auto off = chosen(all, &Landing::offBed);
  giveCount(result, key.pointsOffBed, key.offBedList, off);
  if (!off.empty()) {
    const Landing& worst = farthestOut(off);
    result.addFinding(
        "points-off-bed", Severity::fault,
        say(Text::tr("{0} of {1} points of the probing grid land off the bed; the farthest, {2}, "
                     "is {3} mm beyond the edge."),
            off.size(), all.size(), placeText(worst), formatFixed(-worst.insideBy, 1)),
        "config-review");
  }
}

void countInMargin(StepResult& result, const std::vector<Landing>& all) {
  const auto& key = keysOf<ProbePositionResults>();
  const auto margin = chosen(all, &Landing::inMargin);
  giveCount(result, key.pointsInMargin, key.inMarginList, margin);
  if (!margin.empty()) {
    const Landing& worst = farthestOut(margin);
    result.addFinding(
        "points-in-margin", Severity::caution,
        say(Text::tr("{0} of {1} points of the probing grid land in the margin; the nearest to the "
                     "edge, {2}, is {3} mm inside it."),
            margin.size(), all.size(), placeText(worst), formatFixed(worst.insideBy, 1)),
        "config-review");
  }
}

void countOutOfReach(StepResult& result, const std::vector<Landing>& all, const Rectangle& travel,
                     Place inForce) {
  const auto& key = keysOf<ProbePositionResults>();
  const auto outside = chosen(all, &Landing::outOfReach);
  giveCount(result, key.pointsOutOfReach, key.outOfReachList, outside);
  if (outside.empty()) {
    return;
  }
  const Place carriage = outside.front().planned - inForce;
  result.addFinding(
      "points-out-of-reach", Severity::fault,
      say(Text::tr("{0} of {1} points of the probing grid send the carriage outside its travel: the "
                   "point planned at {2}, {3} needs it at {4}, {5}, but the travel is x {6} … {7} "
                   "and y {8} … {9} mm."),
          outside.size(), all.size(), formatFixed(outside.front().planned.x, 1),
          formatFixed(outside.front().planned.y, 1), formatFixed(carriage.x, 1), formatFixed(carriage.y, 1),
          formatNumber(travel.minX), formatNumber(travel.maxX), formatNumber(travel.minY),
          formatNumber(travel.maxY)),
      "config-review");
}

}  // namespace

PlannedGrid plannedGrid(const ProbePositionInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<ProbePositionResults>();
  std::vector<GridNumber> known;
  std::string lacking;
  const auto fields = describedFields<ProbePositionInputs>();
  const auto fieldOf = [&](const SettingId& setting) -> const Field& {
    return *findField(fields, setting.id);
  };
  const std::pair<SettingId, const std::optional<double>&> needed[] = {
      {key.probingMinX, inputs.probingMinX},       {key.probingMaxX, inputs.probingMaxX},
      {key.probingMinY, inputs.probingMinY},       {key.probingMaxY, inputs.probingMaxY},
      {key.probingColumns, inputs.probingColumns}, {key.probingRows, inputs.probingRows}};
  for (const auto& [setting, typed] : needed) {
    if (typed) {
      known.push_back({*typed, setting.id});
    } else if (const auto inForce = context.inForceNumber(setting)) {
      known.push_back({*inForce, "as_found." + setting.id});
    } else {
      lacking += (lacking.empty() ? "" : ", ") + fieldOf(setting).label;
    }
  }
  if (!lacking.empty()) {
    return {std::nullopt, say(Text::tr("the probing grid is not known: {0}"), lacking)};
  }
  refuseUnlessBelow(known[0], known[1], "x");
  refuseUnlessBelow(known[2], known[3], "y");
  const int columns = wholeLines(known[4], fieldOf(key.probingColumns));
  const int rows = wholeLines(known[5], fieldOf(key.probingRows));
  return {ProbingGrid{{known[0].value, known[1].value, known[2].value, known[3].value}, columns, rows}, {}};
}

std::vector<Landing> giveProbingPoints(StepResult& result, const PlannedGrid& planned,
                                       const PlanOfBed& plan, const std::optional<Place>& inForce) {
  const auto& key = keysOf<ProbePositionResults>();
  if (!planned.grid || !inForce) {
    const std::string why = planned.grid ? Text::tr("the probe offset in force is not known") : planned.why;
    for (const ResultId& id :
         {ResultId(key.pointsOffBed), ResultId(key.pointsInMargin), ResultId(key.pointsOutOfReach)}) {
      result.withhold(id, why);
    }
    return {};
  }
  auto all =
      landings(*planned.grid, plan.bed, plan.travel, *plan.offset, *inForce, plan.margin.value_or(0));
  if (plan.bed) {
    countOffBed(result, all);
  } else {
    result.withhold(key.pointsOffBed, plan.whyNoBed);
  }
  if (plan.bed && plan.margin) {
    countInMargin(result, all);
  } else {
    result.withhold(key.pointsInMargin, plan.bed ? std::string() : plan.whyNoBed);
  }
  if (plan.travel) {
    countOutOfReach(result, all, *plan.travel, *inForce);
  } else {
    result.withhold(key.pointsOutOfReach, plan.whyNoTravel);
  }
  return all;
}

}  // namespace fettle
