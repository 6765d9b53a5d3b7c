#include "core/steps/config_review/probing.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/config_review/limits.h"
#include "core/steps/config_review/results.h"

namespace fettle {
namespace {

std::optional<Place> offsetOf(const Review& review) {
  const auto x = review.number("probe_offset_x");
  const auto y = review.number("probe_offset_y");
  return x && y ? std::optional(Place{*x, *y}) : std::nullopt;
}

std::optional<Rectangle> rectangleFound(const Review& review, const std::string& what) {
  const auto x = spanFound(review, what, "x");
  const auto y = spanFound(review, what, "y");
  return x && y ? std::optional(Rectangle{x->low, x->high, y->low, y->high}) : std::nullopt;
}

void noteOffBed(StepResult& result, const std::string& axis, double at, double beyond) {
  if (beyond > 0) {
    result.addFinding(
        "probe-off-bed", Severity::fault,
        say(Text::tr("The probe would touch at {0} = {1} mm, {2} mm beyond the bed: it finds nothing, "
                     "and the nozzle dives on."),
            axis, formatNumber(at), formatNumber(beyond)),
        "probe-position");
  }
}

void judgeAxisOnBed(StepResult& result, const std::string& axis, const Span& grid, double low,
                    double high) {
  noteOffBed(result, axis, grid.low, low - grid.low);
  noteOffBed(result, axis, grid.high, grid.high - high);
}

/// The corner of the grid that lies farthest out on a disc.
void judgeOnDisc(StepResult& result, const Rectangle& grid, const Bed& bed) {
  const auto corners = grid.outline();
  const Place worst = *std::min_element(
      corners.begin(), corners.end(), [&](Place a, Place b) { return bed.insideBy(a) < bed.insideBy(b); });
  if (const double inside = bed.insideBy(worst); inside < 0) {
    result.addFinding(
        "probe-off-bed", Severity::fault,
        say(Text::tr("The probe would touch at {0}, {1} mm, {2} mm beyond the edge of a disc of radius "
                     "{3} mm: it finds nothing, and the nozzle dives on."),
            formatNumber(worst.x), formatNumber(worst.y), formatFixed(-inside, 1),
            formatNumber(*bed.radius)),
        "probe-position");
  }
}

void noteOutOfReach(StepResult& result, const std::string& axis, double at, double offset, double end,
                    double sign) {
  const double carriage = at - offset;
  const double beyond = sign * (carriage - end);
  // Typed decimals: sums miss by some 1e-14 mm.
  if (beyond > 1e-9) {
    result.addFinding(
        "probe-out-of-reach", Severity::fault,
        say(Text::tr("To touch at {0} = {1} mm with the tip {2} mm from the nozzle the carriage would "
                     "have to go to {3} mm, {4} mm beyond its travel ({5} mm)."),
            axis, formatNumber(at), formatNumber(offset), formatNumber(carriage), formatNumber(beyond),
            formatNumber(end)),
        "probe-position");
  }
}

void judgeReachable(StepResult& result, const Rectangle& grid, const Rectangle& travel, Place offset) {
  noteOutOfReach(result, "x", grid.minX, offset.x, travel.minX, -1);
  noteOutOfReach(result, "x", grid.maxX, offset.x, travel.maxX, 1);
  noteOutOfReach(result, "y", grid.minY, offset.y, travel.minY, -1);
  noteOutOfReach(result, "y", grid.maxY, offset.y, travel.maxY, 1);
}

void giveReach(StepResult& result, const std::optional<Bed>& bed, const std::optional<Rectangle>& travel,
               const std::optional<Place>& offset) {
  const auto& key = keysOf<ConfigReviewResults>();
  if (!bed || !travel || !offset) {
    const std::string why = !offset ? Text::tr("the probe offset as found is not known")
                            : !bed  ? noBedSize()
                                    : noTravel();
    for (const ResultId& id :
         {ResultId(key.safeMinX), ResultId(key.safeMaxX), ResultId(key.safeMinY), ResultId(key.safeMaxY)}) {
      result.withhold(id, why);
    }
    return;
  }
  const Rectangle reach = reachOfTip(*travel, *bed, *offset, 0);
  result.give(key.safeMinX, reach.minX);
  result.give(key.safeMaxX, reach.maxX);
  result.give(key.safeMinY, reach.minY);
  result.give(key.safeMaxY, reach.maxY);
  if (nothingToReach(*travel, *bed, *offset, 0)) {
    result.addFinding(
        "no-reach", Severity::fault,
        say(Text::tr("With the tip at {0}, {1} mm from the nozzle as found the probe reaches no part of "
                     "the bed."),
            formatNumber(offset->x), formatNumber(offset->y)),
        "probe-position");
  }
}

void addOutline(Chart& chart, std::string name, SeriesRole role, int hue,
                const std::vector<Place>& places) {
  Series series;
  series.name = std::move(name);
  series.role = role;
  series.hue = hue;
  for (const Place& place : places) {
    series.x.push_back(place.x);
    series.y.push_back(place.y);
  }
  chart.series.push_back(std::move(series));
}

/// As found it is dashed over what is there, or named with it where both are one.
void addTravel(Chart& chart, const std::optional<Rectangle>& travel,
               const std::optional<Rectangle>& found) {
  const bool same = travel && travel == found;
  if (travel) {
    addOutline(chart, same ? Text::tr("travel, as found the same") : Text::tr("travel"),
               SeriesRole::outline, 2, travel->outline());
  }
  if (found && !same) {
    addOutline(chart, Text::tr("travel as found"), SeriesRole::comparison, 4, found->outline());
  }
}

}  // namespace

void judgeProbing(StepResult& result, const Review& review) {
  const auto bed = bedOf(review.sheet);
  const auto travel = travelOf(review.sheet);
  const auto offset = offsetOf(review);
  giveReach(result, bed, travel, offset);
  noteReversed(result, review, "probing", "x");
  noteReversed(result, review, "probing", "y");
  const auto grid = rectangleFound(review, "probing");
  if (!grid) {
    return;
  }
  if (bed && bed->radius) {
    judgeOnDisc(result, *grid, *bed);
  } else if (bed) {
    judgeAxisOnBed(result, "x", {grid->minX, grid->maxX}, bed->box.minX, bed->box.maxX);
    judgeAxisOnBed(result, "y", {grid->minY, grid->maxY}, bed->box.minY, bed->box.maxY);
  }
  if (travel && offset) {
    judgeReachable(result, *grid, *travel, *offset);
  }
}

Chart reviewPlan(const Review& review) {
  Chart chart;
  chart.kind = ChartKind::bedPlan;
  chart.view = "plan";
  chart.title = Text::tr("Bed and travel");
  chart.x = {Text::tr("x"), "mm"};
  chart.y = {Text::tr("y"), "mm"};
  chart.whenEmpty = Text::tr("Enter bed and travel on the machine sheet, and what the controller lists.");
  const auto travel = travelOf(review.sheet);
  const auto offset = offsetOf(review);
  if (const auto bed = bedOf(review.sheet)) {
    addOutline(chart, Text::tr("bed"), SeriesRole::outline, 0, bed->outline(0));
  }
  addTravel(chart, travel, rectangleFound(review, "travel"));
  if (travel && offset) {
    addOutline(chart, Text::tr("travel of the tip"), SeriesRole::outline, 3,
               travel->movedBy(*offset).outline());
  }
  if (const auto grid = rectangleFound(review, "probing")) {
    auto corners = grid->outline();
    corners.pop_back();
    addOutline(chart, Text::tr("corners of the probing grid"), SeriesRole::planned, 1, corners);
  }
  return chart;
}

}  // namespace fettle
