#include "core/steps/config_review/limits.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/config_review/results.h"
#include "core/steps/config_review/settings.h"

namespace fettle {
namespace {

constexpr double linerLimit = 240;

using Limit = std::optional<double>;

std::string labelOf(const std::string& id) {
  const ListedSetting* listed = findListed(id);
  return listed ? listed->description.label : id;
}

/// Both limits of one axis as they are on the sheet.
struct SheetLimits {
  Limit low, high;
};

SheetLimits travelOnSheet(const MachineSheet& sheet, const std::string& axis) {
  if (axis == "x") {
    return {sheet.travelMinX, sheet.travelMaxX};
  }
  return axis == "y" ? SheetLimits{sheet.travelMinY, sheet.travelMaxY}
                     : SheetLimits{sheet.travelMinZ, sheet.travelMaxZ};
}

SheetLimits bedOnSheet(const MachineSheet& sheet, const std::string& axis) {
  if (axis == "z" || sheet.bedShape == "disc") {
    return {};
  }
  return axis == "x" ? SheetLimits{sheet.bedMinX, sheet.bedMaxX}
                     : SheetLimits{sheet.bedMinY, sheet.bedMaxY};
}

/// One limit as found beside the one that is there; `sign` +1 for an upper limit, −1 for a lower one.
struct Pair {
  std::string axis, at;
  double found = 0, real = 0, sign = 1;
  double beyond() const { return sign * (found - real); }
};

void noteTravel(StepResult& result, const std::string& id, const Pair& pair) {
  const double beyond = pair.beyond();
  if (beyond > 0) {
    result.addFinding(
        "travel-beyond", Severity::fault,
        say(pair.sign > 0
                ? Text::tr("{0}: as found the travel goes to {1} mm, it ends at {2} mm: the carriage would "
                           "be driven {3} mm into its end.")
                : Text::tr("{0}: as found the travel begins at {1} mm, it can begin at {2} mm only: the "
                           "carriage would be driven {3} mm into its end."),
            pair.axis, formatNumber(pair.found), formatNumber(pair.real), formatNumber(beyond)),
        {}, pair.at);
    result.propose(keysOf<ConfigReviewResults>().setting(id), plainQuantity(pair.real, "mm"));
  } else if (beyond < 0) {
    result.addFinding(
        "travel-unused", Severity::note,
        say(pair.sign > 0
                ? Text::tr(
                      "{0}: as found the travel goes to {1} mm, it ends at {2} mm: {3} mm are not used.")
                : Text::tr(
                      "{0}: as found the travel begins at {1} mm, it could begin at {2} mm: {3} mm are "
                      "not used."),
            pair.axis, formatNumber(pair.found), formatNumber(pair.real), formatNumber(-beyond)),
        {}, pair.at);
  }
}

void noteBed(StepResult& result, const Pair& pair) {
  if (pair.beyond() > 0) {
    result.addFinding(
        "bed-beyond", Severity::fault,
        say(pair.sign > 0
                ? Text::tr(
                      "{0}: as found the bed ends at {1} mm, the plate ends at {2} mm: the nozzle would "
                      "print and dive {3} mm beside it.")
                : Text::tr("{0}: as found the bed begins at {1} mm, the plate begins at {2} mm: the nozzle "
                           "would print and dive {3} mm beside it."),
            pair.axis, formatNumber(pair.found), formatNumber(pair.real), formatNumber(pair.beyond())),
        {}, pair.at);
  }
}

template <typename Note>
void compare(const Review& review, const std::string& what, const std::string& axis,
             const SheetLimits& real, Note note) {
  const std::string low = what + "_min_" + axis;
  const std::string high = what + "_max_" + axis;
  if (const auto found = review.number(low); found && real.low) {
    note(low, Pair{axis, review.at(low), *found, *real.low, -1});
  }
  if (const auto found = review.number(high); found && real.high) {
    note(high, Pair{axis, review.at(high), *found, *real.high, 1});
  }
}

void judgeTemperature(StepResult& result, const Review& review, const std::string& id,
                      const ResultId& limitId, const std::string& code, const Limit& limit,
                      const std::string& follows) {
  if (!limit) {
    result.withhold(limitId, say(Text::tr("not on the machine sheet: {0}"), labelOf(id)));
    return;
  }
  result.give(limitId, *limit);
  const auto found = review.number(id);
  if (found && *found > *limit) {
    result.addFinding(code, Severity::fault,
                      say(Text::tr("{0}: as found up to {1} °C, the limit is {2} °C. {3}"), labelOf(id),
                          formatNumber(*found), formatNumber(*limit), follows),
                      {}, review.at(id));
    result.propose(keysOf<ConfigReviewResults>().setting(id), plainQuantity(*limit, "C"));
  }
}

}  // namespace

bool noteReversed(StepResult& result, const Review& review, const std::string& what,
                  const std::string& axis) {
  const auto low = review.number(what + "_min_" + axis);
  const auto high = review.number(what + "_max_" + axis);
  if (!low || !high || *low < *high) {
    return false;
  }
  result.addFinding(
      "limits-reversed", Severity::fault,
      say(Text::tr("{0} is {1} mm and {2} is {3} mm: the lower limit must be below the upper one."),
          what + "_min_" + axis, formatNumber(*low), what + "_max_" + axis, formatNumber(*high)),
      {}, review.at(what + "_min_" + axis));
  return true;
}

std::optional<Span> spanFound(const Review& review, const std::string& what, const std::string& axis) {
  const auto low = review.number(what + "_min_" + axis);
  const auto high = review.number(what + "_max_" + axis);
  return low && high && *low < *high ? std::optional(Span{*low, *high}) : std::nullopt;
}

void judgePlaces(StepResult& result, const Review& review, const std::string& axis) {
  if (!noteReversed(result, review, "travel", axis)) {
    compare(review, "travel", axis, travelOnSheet(review.sheet, axis),
            [&](const std::string& id, const Pair& pair) { noteTravel(result, id, pair); });
  }
  if (!noteReversed(result, review, "bed", axis)) {
    compare(review, "bed", axis, bedOnSheet(review.sheet, axis),
            [&](const std::string&, const Pair& pair) { noteBed(result, pair); });
  }
}

void judgeRadius(StepResult& result, const Review& review) {
  const auto found = review.number("bed_radius");
  if (found && review.sheet.bedShape == "disc" && review.sheet.bedRadius &&
      *found > *review.sheet.bedRadius) {
    result.addFinding(
        "bed-radius", Severity::fault,
        say(Text::tr("As found the bed has a radius of {0} mm, the plate one of {1} mm: the nozzle would "
                     "print and dive {2} mm beside it."),
            formatNumber(*found), formatNumber(*review.sheet.bedRadius),
            formatNumber(*found - *review.sheet.bedRadius)),
        {}, review.at("bed_radius"));
  }
}

void judgeTemperatures(StepResult& result, const Review& review) {
  const auto& key = keysOf<ConfigReviewResults>();
  const MachineSheet& sheet = review.sheet;
  const bool lined = sheet.hotEndLiner.value_or(false);
  Limit hotEnd = sheet.hotEndMax;
  if (lined) {
    hotEnd = std::min(hotEnd.value_or(linerLimit), linerLimit);
  }
  const bool byLiner = lined && *hotEnd == linerLimit;
  judgeTemperature(result, review, "hot_end_max_C", key.hotEndLimit, "hot-end-limit", hotEnd,
                   byLiner ? Text::tr("Above it the polymer tube down to the nozzle softens and gives off "
                                      "fumes.")
                           : Text::tr("The hot end is not made for more."));
  judgeTemperature(result, review, "bed_max_C", key.bedLimit, "bed-limit", sheet.bedMax,
                   Text::tr("Magnets, adhesive and wiring of the bed are not made for more."));
}

void judgeSpeed(StepResult& result, const Review& review, const std::string& axis) {
  const ResultId id = keysOf<ConfigReviewResults>().reachableSpeed(axis);
  const SheetLimits real = travelOnSheet(review.sheet, axis);
  auto travel = real.low && real.high && *real.low < *real.high ? std::optional(Span{*real.low, *real.high})
                                                                : spanFound(review, "travel", axis);
  const auto acceleration = review.number(axis + ".acceleration");
  if (!travel || !acceleration) {
    result.withhold(
        id, travel ? Text::tr("the acceleration is not known") : Text::tr("the travel is not known"));
    return;
  }
  const double length = travel->high - travel->low;
  const double reachable = std::sqrt(*acceleration * length);
  result.give(id, reachable);
  const auto speed = review.number(axis + ".top_speed");
  if (speed && *speed > reachable) {
    result.addFinding(
        "speed-never-reached", Severity::caution,
        say(Text::tr("{0}: a top speed of {1} mm/s at {2} mm/s² needs {3} mm from rest to rest, the "
                     "travel is {4} mm: {5} mm/s is the most. If the speed is meant per minute, it is "
                     "{6} mm/s."),
            axis, formatNumber(*speed), formatNumber(*acceleration),
            formatFixed(*speed * *speed / *acceleration, 0), formatNumber(length),
            formatFixed(reachable, 0), formatPlain(*speed / 60)),
        "motion-limits", review.at(axis + ".top_speed"));
  }
}

}  // namespace fettle
