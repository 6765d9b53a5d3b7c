#include "core/steps/bed_shape/charts.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

Chart emptyChart(ChartKind kind, std::string view, std::string title) {
  Chart chart;
  chart.kind = kind;
  chart.view = std::move(view);
  chart.title = std::move(title);
  chart.x = {"x", "mm"};
  chart.y = {"y", "mm"};
  chart.whenEmpty = Text::tr("Paste or type the grid of heights, or its points, to see the bed.");
  return chart;
}

Chart emptyCut(std::string title, const char* along) {
  Chart chart = emptyChart(ChartKind::curve, "cuts", std::move(title));
  chart.about = along;
  chart.x = {along, "mm"};
  chart.y = {Text::tr("height, tilt removed"), "mm"};
  return chart;
}

Surface surfaceOf(const std::vector<double>& x, const std::vector<double>& y, std::string label,
                  const std::function<double(std::size_t column, std::size_t row)>& height) {
  Surface surface;
  surface.axis = {std::move(label), "mm"};
  surface.x = x;
  surface.y = y;
  for (std::size_t row = 0; row < y.size(); ++row) {
    auto& line = surface.z.emplace_back();
    for (std::size_t column = 0; column < x.size(); ++column) {
      line.push_back(height(column, row));
    }
  }
  return surface;
}

std::vector<double> evenly(double middle, double halfRange) {
  constexpr int lines = 25;
  std::vector<double> places;
  places.reserve(lines);
  for (int i = 0; i < lines; ++i) {
    places.push_back(middle + halfRange * (2.0 * i / (lines - 1) - 1));
  }
  return places;
}

/// The map of a net, blank cells and all, or of the quadratic surface through scattered points.
std::optional<Surface> mapOf(const BedHeights& heights, const BedForm& form, bool withoutTilt) {
  const auto tilt = [&](double x, double y) { return withoutTilt ? form.plane.plane.at(x, y) : 0.0; };
  if (const auto& grid = heights.withBlanks ? heights.withBlanks : heights.grid) {
    return surfaceOf(grid->x, grid->y, Text::tr("height"), [&](std::size_t column, std::size_t row) {
      return grid->z(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)) -
             tilt(grid->x[column], grid->y[row]);
    });
  }
  if (!form.quadratic) {
    return std::nullopt;
  }
  const auto& fit = *form.quadratic;
  const auto x = evenly(fit.middleX, fit.halfRangeX);
  const auto y = evenly(fit.middleY, fit.halfRangeY);
  return surfaceOf(x, y, Text::tr("height of the fitted surface"),
                   [&](std::size_t column, std::size_t row) {
                     return fit.at(x[column], y[row]) - tilt(x[column], y[row]);
                   });
}

Series faultyPoints(const GridReadings& grid, const GridFaults& faults) {
  Series series;
  series.name = Text::tr("not to be trusted");
  series.role = SeriesRole::fault;
  const auto add = [&](std::size_t column, std::size_t row) {
    series.x.push_back(grid.x[column]);
    series.y.push_back(grid.y[row]);
  };
  for (std::size_t row = 0; row < grid.y.size(); ++row) {
    for (std::size_t column = 0; column < grid.x.size(); ++column) {
      if (faults.affected[row][column]) {
        add(column, row);
      }
    }
  }
  for (const auto& spike : faults.spikes) {
    add(spike.column, spike.row);
  }
  return series;
}

void addPoints(Chart& chart, const BedHeights& heights, const std::optional<GridFaults>& faults) {
  if (heights.count() == 0) {
    return;
  }
  if (heights.grid) {
    if (faults) {
      if (Series wrong = faultyPoints(*heights.grid, *faults); !wrong.x.empty()) {
        chart.series.push_back(std::move(wrong));
      }
    }
    return;
  }
  Series touched;
  touched.name = Text::tr("touched");
  touched.x = heights.x;
  touched.y = heights.y;
  chart.series.push_back(std::move(touched));
}

/// Heights less the plane along one direction: one trace per line of a net, or all points.
void addCuts(Chart& chart, const BedHeights& heights, const BedForm& form, bool along) {
  if (!heights.grid) {
    Series points;
    points.name = Text::tr("points");
    points.x = along ? heights.x : heights.y;
    points.y = form.plane.residuals;
    chart.series.push_back(std::move(points));
    return;
  }
  const auto& grid = *heights.grid;
  const auto& lines = along ? grid.y : grid.x;
  const auto& places = along ? grid.x : grid.y;
  for (std::size_t line = 0; line < lines.size(); ++line) {
    Series cut;
    cut.name = (along ? "y " : "x ") + formatNumber(lines[line]);
    cut.role = SeriesRole::trace;
    cut.hue = static_cast<int>(line);
    for (std::size_t i = 0; i < places.size(); ++i) {
      const std::size_t row = along ? line : i;
      const std::size_t column = along ? i : line;
      cut.x.push_back(places[i]);
      cut.y.push_back(grid.z(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)) -
                      form.plane.plane.at(grid.x[column], grid.y[row]));
    }
    chart.series.push_back(std::move(cut));
  }
}

/// The places of lines that have dropped, across a cut.
void markDrops(Chart& chart, const GridReadings& grid, const GridFaults& faults, bool along) {
  for (const auto& edge : faults.edges) {
    const bool ofX = edge.side == BedSide::left || edge.side == BedSide::right;
    if (!edge.drop || ofX != along) {
      continue;
    }
    const auto& places = along ? grid.x : grid.y;
    const auto inner = static_cast<std::size_t>(edge.line - 1);
    const bool low = edge.side == BedSide::left || edge.side == BedSide::front;
    const double at = places[low ? inner : places.size() - 1 - inner];
    const double outer = low ? places.front() : places.back();
    if (edge.line == 1) {
      chart.lines.push_back({Text::tr("off the bed or on a clip"), at, true});
    } else {
      chart.bands.push_back(
          {Text::tr("off the bed or on a clip"), std::min(at, outer), std::max(at, outer), true});
    }
  }
}

}  // namespace

std::vector<Chart> bedShapeCharts(const BedHeights& heights, const std::optional<BedForm>& form,
                                  const std::optional<GridFaults>& faults) {
  Chart raw = emptyChart(ChartKind::heightMap, "map", Text::tr("Heights"));
  Chart flat = emptyChart(ChartKind::heightMap, "tilt-removed", Text::tr("Tilt removed"));
  Chart alongX = emptyCut(Text::tr("Cuts along x"), "x");
  Chart alongY = emptyCut(Text::tr("Cuts along y"), "y");
  addPoints(raw, heights, faults);
  if (form) {
    raw.surface = mapOf(heights, *form, false);
    flat.surface = mapOf(heights, *form, true);
    addPoints(flat, heights, faults);
    addCuts(alongX, heights, *form, true);
    addCuts(alongY, heights, *form, false);
    if (heights.grid && faults) {
      markDrops(alongX, *heights.grid, *faults, true);
      markDrops(alongY, *heights.grid, *faults, false);
    }
  }
  return {raw, flat, alongX, alongY};
}

}  // namespace fettle
