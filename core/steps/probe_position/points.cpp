#include "core/steps/probe_position/points.h"

#include <algorithm>
#include <utility>

#include "core/fields/field_reader.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

void refuseUnlessBelow(double low, double high, const char* axis) {
  if (low >= high) {
    throw Refusal{say(Text::tr("Probing grid {0}: it begins at {1} mm and ends at {2} mm; the beginning "
                               "must be below the end."),
                      axis, formatNumber(low), formatNumber(high))};
  }
}

int wholeLines(double lines, const Field& field) {
  const AcceptedNumbers counts = numbersOf(field);
  if (!counts.has(lines)) {
    throw Refusal{field.label + ": " + counts.notPossible(formatNumber(lines))};
  }
  return static_cast<int>(lines);
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

void giveCount(StepResult& result, const std::string& id, const std::vector<Landing>& wrong) {
  result.give(id, static_cast<double>(wrong.size()), "1");
  if (!wrong.empty()) {
    result.say(id + "_list", listed(wrong));
  }
}

const Landing& farthestOut(const std::vector<Landing>& places) {
  return *std::min_element(places.begin(), places.end(),
                           [](const Landing& a, const Landing& b) { return a.insideBy < b.insideBy; });
}

void judgeOnBed(StepResult& result, const std::vector<Landing>& all) {
  const auto off = chosen(all, &Landing::offBed);
  giveCount(result, "points_off_bed", off);
  if (!off.empty()) {
    const Landing& worst = farthestOut(off);
    result.addFinding(
        "points-off-bed", Severity::fault,
        say(Text::tr("{0} of {1} points of the probing grid land off the bed; the farthest, {2}, "
                     "is {3} mm beyond the edge."),
            off.size(), all.size(), placeText(worst), formatFixed(-worst.insideBy, 1)),
        "config-review");
  }
  const auto margin = chosen(all, &Landing::inMargin);
  giveCount(result, "points_in_margin", margin);
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

void judgeReach(StepResult& result, const std::vector<Landing>& all, const Rectangle& travel,
                Place asFound) {
  const auto outside = chosen(all, &Landing::outOfReach);
  giveCount(result, "points_out_of_reach", outside);
  if (outside.empty()) {
    return;
  }
  const Place carriage = outside.front().planned - asFound;
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

void withhold(StepResult& result, const std::vector<std::string>& ids, const std::string& why) {
  for (const auto& id : ids) {
    result.withhold(id, "1", why);
  }
}

}  // namespace

PlannedGrid plannedGrid(const ProbePositionInputs& inputs, const StepContext& context) {
  std::vector<double> known;
  std::string lacking;
  const auto fields = describedFields<ProbePositionInputs>();
  const auto fieldOf = [&](const char* key) -> const Field& { return *findField(fields, key); };
  const std::pair<const char*, const std::optional<double>&> needed[] = {
      {"probing_min_x", inputs.probingMinX},      {"probing_max_x", inputs.probingMaxX},
      {"probing_min_y", inputs.probingMinY},      {"probing_max_y", inputs.probingMaxY},
      {"probing_columns", inputs.probingColumns}, {"probing_rows", inputs.probingRows}};
  for (const auto& [key, typed] : needed) {
    if (const auto value = typed ? typed : context.asFoundNumber(key)) {
      known.push_back(*value);
    } else {
      lacking += (lacking.empty() ? "" : ", ") + fieldOf(key).label;
    }
  }
  if (!lacking.empty()) {
    return {std::nullopt, say(Text::tr("the probing grid is not known: {0}"), lacking)};
  }
  refuseUnlessBelow(known[0], known[1], "x");
  refuseUnlessBelow(known[2], known[3], "y");
  const int columns = wholeLines(known[4], fieldOf("probing_columns"));
  const int rows = wholeLines(known[5], fieldOf("probing_rows"));
  return {ProbingGrid{{known[0], known[1], known[2], known[3]}, columns, rows}, {}};
}

std::vector<Landing> giveProbingPoints(StepResult& result, const PlannedGrid& planned,
                                       const PlanOfBed& plan, const std::optional<Place>& asFound) {
  if (!planned.grid || !asFound) {
    withhold(result, {"points_off_bed", "points_in_margin", "points_out_of_reach"},
             planned.grid ? Text::tr("the offset as found is not known") : planned.why);
    return {};
  }
  auto all = landings(*planned.grid, plan.bed, plan.travel, *plan.offset, *asFound, plan.margin);
  if (plan.bed) {
    judgeOnBed(result, all);
  } else {
    withhold(result, {"points_off_bed", "points_in_margin"}, noBedSize());
  }
  if (plan.travel) {
    judgeReach(result, all, *plan.travel, *asFound);
  } else {
    withhold(result, {"points_out_of_reach"}, noTravel());
  }
  return all;
}

}  // namespace fettle
