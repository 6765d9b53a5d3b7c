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

/// Where a pair of indication and reference stands on a chart.
using PlaceOnChart = std::pair<double, double> (*)(double indicated, double reference);

std::pair<double, double> onCurve(double indicated, double reference) {
  return {indicated, reference};
}

std::pair<double, double> asDeviation(double indicated, double reference) {
  return {reference, indicated - reference};
}

void put(Series& series, const std::pair<double, double>& at) {
  series.x.push_back(at.first);
  series.y.push_back(at.second);
}

void addPoints(Chart& chart, const SensorPicture& picture, PlaceOnChart place) {
  Series counted = series(Text::tr("measured"), SeriesRole::measured);
  Series left = series(Text::tr("excluded"), SeriesRole::excluded);
  for (const auto& point : picture.points) {
    if (point.indicated && point.reference) {
      put(point.excluded ? left : counted, place(*point.indicated, *point.reference));
    }
  }
  if (!counted.x.empty()) {
    addWithUncertainty(chart, std::move(counted), picture.expanded);
  }
  if (!left.x.empty()) {
    chart.series.push_back(std::move(left));
  }
}

/// A likely curve over the indications; where it shows nothing it has no point.
Series curveOf(const LikelyCurve& likely, const SensorCurve& configured, double low, double high, int hue,
               PlaceOnChart place) {
  constexpr int steps = 60;
  Series curve = series(likely.isBias ? Text::tr("other bias resistor") : likely.curve.label,
                        SeriesRole::comparison, hue);
  for (int i = 0; i <= steps; ++i) {
    const double indicated = low + (high - low) * i / steps;
    if (const auto shown = likely.shownFor(configured, indicated)) {
      put(curve, place(indicated, *shown));
    }
  }
  return curve;
}

/// The straight line through the points and the curves that fit better than the configured one.
void addExplanations(Chart& chart, const SensorPicture& picture, PlaceOnChart place) {
  if (!picture.line) {
    return;
  }
  const auto points = included(picture.points);
  const auto [lowest, highest] = std::minmax_element(
      points.begin(), points.end(), [](auto& a, auto& b) { return *a.indicated < *b.indicated; });
  const double low = *lowest->indicated, high = *highest->indicated;
  Series fit = series(Text::tr("straight line"), SeriesRole::model);
  for (const double indicated : {low, high}) {
    put(fit, place(indicated, picture.line->at(indicated)));
  }
  chart.series.push_back(std::move(fit));
  for (std::size_t i = 0; i < std::min(picture.likely.size(), mostCurves); ++i) {
    chart.series.push_back(
        curveOf(picture.likely[i], *picture.configured, low, high, static_cast<int>(i) + 1, place));
  }
}

Chart sensorChart(const char* id, std::string title, Axis x, Axis y) {
  Chart chart;
  chart.view = id;
  chart.title = std::move(title);
  chart.x = std::move(x);
  chart.y = std::move(y);
  chart.whenEmpty = Text::tr("Enter what was indicated and what the reference thermometer showed.");
  return chart;
}

Chart deviationChart(const SensorPicture& picture) {
  Chart chart = sensorChart("deviations", Text::tr("Deviation"), {Text::tr("reference"), "C"},
                            {Text::tr("indicated − reference"), "C"});
  addPoints(chart, picture, &asDeviation);
  addExplanations(chart, picture, &asDeviation);
  if (!chart.series.empty()) {
    for (const auto& limit : {picture.tolerance.low, picture.tolerance.high}) {
      if (limit) {
        chart.lines.push_back(
            {say(Text::tr("limit {0} °C, to 250 °C"), formatNumber(*limit)), *limit, false});
      }
    }
  }
  return chart;
}

Chart curveChart(const SensorPicture& picture) {
  Chart chart = sensorChart("curves", Text::tr("Reference against indication"),
                            {Text::tr("indicated"), "C"}, {Text::tr("reference"), "C"});
  addPoints(chart, picture, &onCurve);
  addExplanations(chart, picture, &onCurve);
  return chart;
}

}  // namespace

std::vector<Chart> sensorCharts(const SensorPicture& picture) {
  return {deviationChart(picture), curveChart(picture)};
}

}  // namespace fettle
