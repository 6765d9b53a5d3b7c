#include "core/steps/probe_position/plan.h"

#include "core/measure/text.h"

namespace fettle {
namespace {

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
  addPlaces(chart, Text::tr("planned"), SeriesRole::planned, 0, planned);
  addPlaces(chart, Text::tr("lands"), SeriesRole::reached, 0, fine);
  addPlaces(chart, Text::tr("lands in the margin"), SeriesRole::reached, 1, inMargin);
  addPlaces(chart, Text::tr("out of reach"), SeriesRole::fault, 1, outOfReach);
  addPlaces(chart, Text::tr("off the bed"), SeriesRole::fault, 0, offBed);
}

}  // namespace

Chart chartOf(const PlanOfBed& plan) {
  Chart chart;
  chart.kind = ChartKind::bedPlan;
  chart.id = "plan";
  chart.title = Text::tr("Plan of the bed");
  chart.x = {"x", "mm"};
  chart.y = {"y", "mm"};
  chart.whenEmpty = Text::tr(
      "Enter bed and travel on the machine sheet, the probing grid as found, and a mark under nozzle and "
      "probe.");
  if (plan.bed) {
    addPlaces(chart, Text::tr("bed"), SeriesRole::outline, 0, plan.bed->outline(0));
    addPlaces(chart, Text::tr("margin"), SeriesRole::outline, 1, plan.bed->outline(plan.margin));
  }
  if (plan.travel) {
    addPlaces(chart, Text::tr("travel of the nozzle"), SeriesRole::outline, 2, plan.travel->outline());
  }
  if (plan.travel && plan.offset) {
    addPlaces(chart, Text::tr("travel of the tip"), SeriesRole::outline, 3,
              plan.travel->movedBy(*plan.offset).outline());
  }
  addLandings(chart, plan.landings);
  addPlaces(chart, Text::tr("marks"), SeriesRole::measured, 0, plan.marks);
  return chart;
}

}  // namespace fettle
