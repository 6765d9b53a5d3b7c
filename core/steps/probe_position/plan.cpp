#include "core/steps/probe_position/plan.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr int landingHue = 4, markHue = 6;  // those before are the outlines'
constexpr double worthALine = 0.5;          // mm, on a bed of some hundred

void addPlaces(Chart& chart, const std::string& name, SeriesRole role, int hue,
               const std::vector<Place>& places) {
  if (places.empty()) {
    return;
  }
  Series series;
  series.name = name;
  series.role = role;
  series.hue = hue;
  for (const auto& place : places) {
    series.x.push_back(place.x);
    series.y.push_back(place.y);
  }
  chart.series.push_back(std::move(series));
}

/// The grid lands as a whole beside where it is planned: one line from the first point tells where all go.
void addShift(Chart& chart, const Landing& first) {
  const double shift = std::hypot(first.real.x - first.planned.x, first.real.y - first.planned.y);
  if (shift > worthALine) {
    addPlaces(chart, say(Text::tr("lands {0} mm from where it is planned"), formatFixed(shift, 1)),
              SeriesRole::trace, landingHue, {first.planned, first.real});
  }
}

void addLandings(Chart& chart, const std::vector<Landing>& landings) {
  std::vector<Place> planned, fine, inMargin, outOfReach, offBed;
  for (const auto& landing : landings) {
    planned.push_back(landing.planned);
    auto& kind = landing.offBed       ? offBed
                 : landing.outOfReach ? outOfReach
                 : landing.inMargin   ? inMargin
                                      : fine;
    kind.push_back(landing.real);
  }
  addPlaces(chart, Text::tr("planned points"), SeriesRole::planned, 0, planned);
  addPlaces(chart, Text::tr("landing points"), SeriesRole::reached, landingHue, fine);
  addPlaces(chart, Text::tr("landing points in the margin"), SeriesRole::reached, 1, inMargin);
  addPlaces(chart, Text::tr("points out of reach"), SeriesRole::fault, 1, outOfReach);
  addPlaces(chart, Text::tr("points off the bed"), SeriesRole::fault, 0, offBed);
  if (!landings.empty()) {
    addShift(chart, landings.front());
  }
}

}  // namespace

Chart chartOf(const PlanOfBed& plan) {
  Chart chart;
  chart.kind = ChartKind::bedPlan;
  chart.view = "plan";
  chart.title = Text::tr("Plan of the bed");
  chart.x = {"x", "mm"};
  chart.y = {"y", "mm"};
  chart.whenEmpty = Text::tr(
      "Enter bed and travel on the machine sheet, the probing grid, and a mark under nozzle and probe.");
  if (plan.bed) {
    addPlaces(chart, Text::tr("bed"), SeriesRole::outline, 0, plan.bed->outline(0));
  }
  if (plan.bed && plan.margin) {
    addPlaces(chart, Text::tr("margin"), SeriesRole::outline, 1, plan.bed->outline(*plan.margin));
  }
  if (plan.travel) {
    addPlaces(chart, Text::tr("travel of the nozzle"), SeriesRole::outline, 2, plan.travel->outline());
  }
  if (plan.travel && plan.offset) {
    addPlaces(chart, Text::tr("travel of the tip"), SeriesRole::outline, 3,
              plan.travel->movedBy(*plan.offset).outline());
  }
  addLandings(chart, plan.landings);
  addPlaces(chart, Text::tr("touch marks"), SeriesRole::measured, markHue, plan.marks);
  return chart;
}

}  // namespace fettle
