#include "core/steps/temperature_sensor/charts.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr std::size_t mostCurves = 3;

Series series(std::string name, SeriesRole role, int hue = 0) {
  Series made;
  made.name = std::move(name);
  made.role = role;
  made.hue = hue;
  return made;
}

template <typename Place>
void addPoints(Chart& chart, const std::vector<SensorPoint>& points, const Place& place) {
  Series counted = series(Text::tr("measured"), SeriesRole::measured);
  Series left = series(Text::tr("excluded"), SeriesRole::excluded);
  for (const auto& point : points) {
    if (point.indicated && point.reference) {
      Series& to = point.excluded ? left : counted;
      const auto [x, y] = place(point);
      to.x.push_back(x);
      to.y.push_back(y);
    }
  }
  for (Series* made : {&counted, &left}) {
    if (!made->x.empty()) {
      chart.series.push_back(std::move(*made));
    }
  }
}

/// A likely curve over the indications; where it shows nothing it has no point.
Series curveOf(const LikelyCurve& likely, const SensorCurve& configured, double low, double high, int hue) {
  constexpr int steps = 60;
  Series curve = series(likely.curve.label, SeriesRole::comparison, hue);
  for (int i = 0; i <= steps; ++i) {
    const double indicated = low + (high - low) * i / steps;
    if (const auto shown = likely.shownFor(configured, indicated)) {
      curve.x.push_back(indicated);
      curve.y.push_back(*shown);
    }
  }
  return curve;
}

Chart curveChart(const SensorPicture& picture) {
  Chart chart;
  chart.id = "curves";
  chart.title = Text::tr("Reference against indication");
  chart.x = {Text::tr("indicated"), "C"};
  chart.y = {Text::tr("reference"), "C"};
  chart.whenEmpty = Text::tr("Enter what was indicated and what the reference thermometer showed.");
  const auto points = included(picture.points);
  addPoints(chart, picture.points,
            [](const SensorPoint& p) { return std::pair(*p.indicated, *p.reference); });
  if (!picture.line) {
    return chart;
  }
  const auto [lowest, highest] = std::minmax_element(
      points.begin(), points.end(), [](auto& a, auto& b) { return *a.indicated < *b.indicated; });
  const double low = *lowest->indicated, high = *highest->indicated;
  Series fit = series(Text::tr("straight line"), SeriesRole::model);
  fit.x = {low, high};
  fit.y = {picture.line->at(low), picture.line->at(high)};
  Series same = series(Text::tr("as indicated"), SeriesRole::trace, 0);
  same.x = same.y = {low, high};
  chart.series.push_back(std::move(fit));
  chart.series.push_back(std::move(same));
  for (std::size_t i = 0; i < std::min(picture.likely.size(), mostCurves); ++i) {
    chart.series.push_back(
        curveOf(picture.likely[i], *picture.configured, low, high, static_cast<int>(i) + 1));
  }
  return chart;
}

Chart deviationChart(const SensorPicture& picture) {
  Chart chart;
  chart.id = "deviations";
  chart.title = Text::tr("Deviation");
  chart.x = {Text::tr("reference"), "C"};
  chart.y = {Text::tr("indicated − reference"), "C"};
  chart.whenEmpty = Text::tr("Enter what was indicated and what the reference thermometer showed.");
  addPoints(chart, picture.points,
            [](const SensorPoint& p) { return std::pair(*p.reference, p.deviation()); });
  if (!chart.series.empty()) {
    for (const auto& limit : {picture.tolerance.low, picture.tolerance.high}) {
      if (limit) {
        chart.lines.push_back({say(Text::tr("limit to 250 °C, {0}"), formatNumber(*limit)), *limit, false});
      }
    }
  }
  return chart;
}

}  // namespace

std::vector<Chart> sensorCharts(const SensorPicture& picture) {
  return {curveChart(picture), deviationChart(picture)};
}

}  // namespace fettle
