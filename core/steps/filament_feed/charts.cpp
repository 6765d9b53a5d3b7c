#include "core/steps/filament_feed/charts.h"

#include <utility>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

void addDraws(Chart& chart, const std::string& name, SeriesRole role, const std::vector<Draw>& draws) {
  if (draws.empty()) {
    return;
  }
  Series series;
  series.name = name;
  series.role = role;
  for (const auto& draw : draws) {
    series.x.push_back(*draw.speed);
    series.y.push_back(draw.ratio());
  }
  chart.series.push_back(std::move(series));
}

Chart drawnChart(const DrawPicture& draws) {
  Chart chart;
  chart.view = "drawn";
  chart.title = Text::tr("Drawn against speed");
  chart.x = {Text::tr("speed"), "mm/s"};
  chart.y = {Text::tr("drawn / commanded"), "1"};
  chart.whenEmpty = Text::tr("Enter draws with their speed: commanded length, mark before and after.");
  addDraws(chart, Text::tr("measured"), SeriesRole::measured, draws.counted);
  addDraws(chart, Text::tr("not counted: faster, slips"), SeriesRole::fault, draws.leftOut);
  addDraws(chart, Text::tr("excluded"), SeriesRole::excluded, draws.excluded);
  if (chart.series.empty()) {
    return chart;
  }
  chart.lines.push_back({Text::tr("all that was commanded"), 1, false});
  Series means;
  means.name = Text::tr("mean of each speed");
  means.role = SeriesRole::reached;
  means.hue = 1;
  means.x = draws.speeds;
  std::vector<double> expanded;
  for (const auto& mean : draws.means) {
    means.y.push_back(mean.value);
    expanded.push_back(expandedUncertainty(mean).value_or(0));
  }
  if (!means.x.empty()) {
    addWithUncertainty(chart, std::move(means), expanded);
  }
  return chart;
}

Series diametersIn(const std::string& name, int hue) {
  Series series;
  series.name = name;
  series.hue = hue;
  return series;
}

Chart diameterChart(const std::vector<DiameterPlace>& places, const std::optional<double>& nominal) {
  Chart chart;
  chart.view = "diameters";
  chart.title = Text::tr("Filament diameter");
  chart.x = countedAxis(Text::tr("place"));
  chart.y = {Text::tr("diameter"), "mm"};
  chart.whenEmpty = Text::tr("Enter the filament's diameter at five places, each in two directions.");
  Series first = diametersIn(Text::tr("one direction"), 0), second = diametersIn(Text::tr("across"), 1);
  Series excluded = diametersIn(Text::tr("excluded"), 2);
  excluded.role = SeriesRole::excluded;
  for (const auto& place : places) {
    if (!place.first || !place.second) {
      continue;
    }
    const auto at = static_cast<double>(place.number);
    for (const auto& [series, value] :
         {std::pair{&first, *place.first}, std::pair{&second, *place.second}}) {
      Series& target = place.excluded ? excluded : *series;
      target.x.push_back(at);
      target.y.push_back(value);
    }
  }
  for (Series* series : {&first, &second, &excluded}) {
    if (!series->x.empty()) {
      chart.series.push_back(std::move(*series));
    }
  }
  if (nominal && !chart.series.empty()) {
    chart.lines.push_back({say(Text::tr("nominal {0}"), formatNumber(*nominal)), *nominal, false});
  }
  return chart;
}

}  // namespace

std::vector<Chart> filamentFeedCharts(const DrawPicture& draws, const std::vector<DiameterPlace>& places,
                                      const std::optional<double>& nominal) {
  return {drawnChart(draws), diameterChart(places, nominal)};
}

}  // namespace fettle
