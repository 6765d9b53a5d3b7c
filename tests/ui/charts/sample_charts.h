#pragma once
#include <cmath>
#include <string>
#include <vector>

#include "core/steps/contract/chart.h"

namespace fettle::tests {

inline Series series(const std::string& name, SeriesRole role, std::vector<double> x, std::vector<double> y,
                     int hue = 0) {
  Series made;
  made.name = name;
  made.role = role;
  made.x = std::move(x);
  made.y = std::move(y);
  made.hue = hue;
  return made;
}

/// Delivered against flow: points, a hinge, limits, an interval and a second axis.
inline Chart hingeChart() {
  Chart chart;
  chart.view = "hinge";
  chart.title = "Delivered against flow";
  chart.x = {"flow", "mm3/s"};
  chart.y = {"delivered / commanded", "1"};
  chart.series = {
      series("measured", SeriesRole::measured, {4, 8, 12, 16, 20}, {0.99, 0.992, 0.955, 0.85, 0.745}),
      series("left out", SeriesRole::excluded, {6}, {0.93}),
      series("hinge", SeriesRole::model, {2, 10.6, 22}, {0.991, 0.991, 0.695})};
  chart.lines = {{"limit 12.5", 12.5, true}, {"5 % below the plateau", 0.941, false}};
  chart.bands = {{"10.5 … 10.7", 10.5, 10.7, true}};
  chart.top = TopAxis{{"print speed", "mm/s"}, 12.0};
  return chart;
}

inline Chart bedPlan() {
  Chart chart;
  chart.kind = ChartKind::bedPlan;
  chart.view = "plan";
  chart.title = "Plan of the bed";
  chart.x = {"x", "mm"};
  chart.y = {"y", "mm"};
  chart.series = {series("bed", SeriesRole::outline, {0, 300, 300, 0}, {0, 0, 200, 200}),
                  series("planned", SeriesRole::planned, {20, 150, 280}, {20, 100, 180}),
                  series("lands", SeriesRole::reached, {24, 154, 284}, {15, 95, 175}, 1),
                  series("off the bed", SeriesRole::fault, {310}, {100})};
  return chart;
}

/// z = 0.001·x + 0.0005·y over 0..100 by 0..80, `count` points a side; the last corner is blank.
inline Chart planeMap(int count = 5) {
  Chart chart;
  chart.kind = ChartKind::heightMap;
  chart.view = "map";
  chart.title = "Heights";
  chart.x = {"x", "mm"};
  chart.y = {"y", "mm"};
  Surface surface;
  surface.axis = {"height", "mm"};
  for (int i = 0; i < count; ++i) {
    surface.x.push_back(100.0 * i / (count - 1));
    surface.y.push_back(80.0 * i / (count - 1));
  }
  for (const double y : surface.y) {
    auto& row = surface.z.emplace_back();
    for (const double x : surface.x) {
      row.push_back(0.001 * x + 0.0005 * y);
    }
  }
  surface.z.back().back() = std::nan("");
  chart.surface = surface;
  return chart;
}

/// One strong cell in a quiet picture of `columns` by `rows`.
inline Chart loneCell(int columns, int rows, std::size_t column, std::size_t row) {
  Chart chart;
  chart.kind = ChartKind::timeFrequency;
  chart.view = "picture";
  chart.title = "Time and frequency";
  chart.x = {"time", "s"};
  chart.y = {"frequency", "Hz"};
  Surface surface;
  surface.axis = {"density", "(mm/s2)2/Hz", true};
  for (int i = 0; i < columns; ++i) {
    surface.x.push_back(0.5 + i);
  }
  for (int j = 0; j < rows; ++j) {
    surface.y.push_back(2.0 * j);
  }
  surface.z.assign(surface.y.size(), std::vector<double>(surface.x.size(), 1.0));
  surface.z[row][column] = 1000;
  chart.surface = surface;
  return chart;
}

/// A swept vibration with one sample that stands out at two thirds.
inline Chart longTrace(std::size_t count) {
  Chart chart;
  chart.view = "trace";
  chart.title = "Acceleration";
  chart.x = {"time", "s"};
  chart.y = {"acceleration", "mm/s2"};
  Series trace = series("along x", SeriesRole::trace, {}, {});
  for (std::size_t i = 0; i < count; ++i) {
    const double t = static_cast<double>(i) / 3200;
    trace.x.push_back(t);
    trace.y.push_back(1000 * std::sin(300 * t + 2 * t * t));
  }
  trace.y[2 * count / 3] = 9000;
  chart.series = {trace};
  return chart;
}

inline Chart emptyChart() {
  Chart chart;
  chart.view = "empty";
  chart.title = "Earlier runs";
  chart.x = {"flow", "mm3/s"};
  chart.whenEmpty = "Enter at least four flows.";
  return chart;
}

}  // namespace fettle::tests
