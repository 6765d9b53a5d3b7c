#include "ui/charts/draw_chart.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/maths/contours.h"
#include "core/maths/decimate.h"
#include "core/maths/finite.h"
#include "ui/charts/chart_labels.h"
#include "ui/charts/label_placement.h"

namespace fettle::ui {
namespace {

constexpr int mostContours = 12;
constexpr double shortestLabelled = 70;  ///< a contour shorter than this carries no number

/// Edges of the pixel columns of the plot, as values of x; rising.
std::vector<double> columnEdges(const ChartLayout& layout) {
  const int columns = std::max(1, static_cast<int>(layout.plot.width()));
  std::vector<double> edges;
  for (int i = 0; i <= columns; ++i) {
    edges.push_back(layout.x.value(layout.plot.left() + layout.plot.width() * i / columns));
  }
  return edges;
}

bool canShow(const AxisScale& scale, double value) {
  return std::isfinite(value) && (value > 0 || !scale.isLogarithmic());
}

bool canShowAll(const AxisScale& scale, const std::vector<double>& values) {
  return maths::allFinite(values) &&
         (!scale.isLogarithmic() ||
          std::all_of(values.begin(), values.end(), [](double value) { return value > 0; }));
}

bool canShow(const Series& series, std::size_t i, const ChartLayout& layout) {
  return canShow(layout.x, series.x[i]) && canShow(layout.y, series.y[i]) &&
         (series.role != SeriesRole::band || canShow(layout.y, series.yHigh[i]));
}

/// The points of a series that both axes can show; the series itself when that is all of them.
const Series& shownPart(const Series& series, const ChartLayout& layout, Series& copy) {
  if (canShowAll(layout.x, series.x) && canShowAll(layout.y, series.y) &&
      canShowAll(layout.y, series.yHigh)) {
    return series;
  }
  copy.role = series.role;
  for (std::size_t i = 0; i < series.x.size(); ++i) {
    if (canShow(series, i, layout)) {
      copy.x.push_back(series.x[i]);
      copy.y.push_back(series.y[i]);
      if (series.role == SeriesRole::band) {
        copy.yHigh.push_back(series.yHigh[i]);
      }
    }
  }
  return copy;
}

std::vector<std::size_t> allOf(std::size_t count) {
  std::vector<std::size_t> indices(count);
  std::iota(indices.begin(), indices.end(), std::size_t{0});
  return indices;
}

bool isThinned(SeriesRole role, std::size_t count, double width) {
  return role != SeriesRole::band && role != SeriesRole::outline && static_cast<double>(count) > 2 * width;
}

/// Whether a contour of another level runs under a place.
bool isCrossed(const ChartDrawing& drawing, double level, const QRectF& place) {
  const QLineF sides[] = {{place.topLeft(), place.topRight()},
                          {place.topRight(), place.bottomRight()},
                          {place.bottomRight(), place.bottomLeft()},
                          {place.bottomLeft(), place.topLeft()}};
  return std::any_of(drawing.contours.begin(), drawing.contours.end(), [&](const DrawnContour& contour) {
    for (qsizetype i = 1; contour.level != level && i < contour.places.size(); ++i) {
      const QLineF piece(contour.places[i - 1], contour.places[i]);
      const bool crosses = std::any_of(std::begin(sides), std::end(sides), [&](const QLineF& side) {
        return piece.intersects(side, nullptr) == QLineF::BoundedIntersection;
      });
      if (crosses || place.contains(piece.p1())) {
        return true;
      }
    }
    return false;
  });
}

void placeLevel(ChartDrawing& drawing, double level, const QString& text, const QFontMetricsF& metrics) {
  const DrawnContour* longest = nullptr;
  double length = 0;
  for (const auto& contour : drawing.contours) {
    double here = 0;
    for (qsizetype i = 1; i < contour.places.size(); ++i) {
      here += QLineF(contour.places[i - 1], contour.places[i]).length();
    }
    if (contour.level == level && here > length) {
      longest = &contour;
      length = here;
    }
  }
  if (longest == nullptr || length < shortestLabelled) {
    return;
  }
  const QSizeF size(metrics.horizontalAdvance(text) + 4, metrics.height() - 2);
  const auto anchors = anchorsAlong(longest->places);
  // From the middle outwards, where no other number stands.
  for (std::size_t step = 0; step < anchors.size(); ++step) {
    const std::size_t half = (step + 1) / 2, middle = anchors.size() / 2;
    const std::size_t index = step % 2 == 0 ? middle + half : middle - half;
    QRectF place(QPointF(), size);
    if (index < anchors.size()) {
      place.moveCenter(anchors[index]);
      const bool isFree = std::none_of(
          drawing.levels.begin(), drawing.levels.end(),
          [&](const auto& other) { return other.place.adjusted(-8, -4, 8, 4).intersects(place); });
      if (isFree && drawing.layout.plot.contains(place) && !isCrossed(drawing, level, place)) {
        drawing.levels.push_back({level, text, place});
        return;
      }
    }
  }
}

void addContours(ChartDrawing& drawing, const Surface& surface, const QFontMetricsF& metrics) {
  const ChartLayout& layout = drawing.layout;
  const Ticks levels = evenTicks(layout.colours.range(), mostContours);
  for (std::size_t k = 0; k < levels.at.size(); ++k) {
    for (const auto& contour : maths::contoursAt(levels.at[k], surface.x, surface.y, surface.z)) {
      QPolygonF places;
      for (const auto& point : contour.points) {
        places << layout.place(point.x, point.y);
      }
      drawing.contours.push_back({levels.at[k], places});
    }
  }
  for (std::size_t k = 0; k < levels.at.size(); ++k) {
    placeLevel(drawing, levels.at[k], levels.labels[static_cast<qsizetype>(k)], metrics);
  }
}

/// The frame without the data, which stay in the caller's chart.
Chart frameOf(const Chart& chart) {
  Chart frame;
  frame.kind = chart.kind;
  frame.view = chart.view;
  frame.about = chart.about;
  frame.title = chart.title;
  frame.x = chart.x;
  frame.y = chart.y;
  frame.lines = chart.lines;
  frame.bands = chart.bands;
  frame.top = chart.top;
  frame.whenEmpty = chart.whenEmpty;
  if (chart.surface) {
    frame.surface.emplace();
    frame.surface->axis = chart.surface->axis;
    frame.surface->difference = chart.surface->difference;
  }
  return frame;
}

/// A model in the colour of a measured curve is a broad pale line under it: both are seen where they agree.
/// Traces of a few points are error bars and the like.
void widenModels(ChartDrawing& drawing, const Chart& chart) {
  constexpr std::size_t fewPoints = 50;
  constexpr double wider = 2.5;
  constexpr float paler = 0.4F;  // seen on both sides of the trace, and not before it
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const Series& model = chart.series[i];
    const bool hasTrace = std::any_of(chart.series.begin(), chart.series.end(), [&](const Series& other) {
      return other.role == SeriesRole::trace && other.hue == model.hue && other.x.size() > fewPoints;
    });
    if (model.role == SeriesRole::model && hasTrace) {
      QPen& pen = drawing.series[i].style.pen;
      pen.setWidthF(wider * pen.widthF());
      pen.setColor(mixed(drawing.palette.panel, pen.color(), paler));  // ends of pieces would shine through
    }
  }
}

}  // namespace

DrawnSeries drawnSeries(const Series& series, const ChartLayout& layout, const Palette& palette) {
  DrawnSeries drawn;
  drawn.style = styleOf(series, palette);
  Series copy;
  // Looking through a long series once more costs as much as thinning it: on even axes what cannot be shown
  // is left out afterwards.
  const bool isEven = !layout.x.isLogarithmic() && !layout.y.isLogarithmic();
  const bool isLong = isThinned(series.role, series.x.size(), layout.plot.width());
  const Series& shown = isEven && isLong ? series : shownPart(series, layout, copy);
  auto indices = isLong ? maths::decimated(shown.x, shown.y, columnEdges(layout)) : allOf(shown.x.size());
  std::erase_if(indices, [&](std::size_t i) { return !canShow(shown, i, layout); });
  if (drawn.style.isClosed && !indices.empty()) {
    indices.push_back(indices.front());
  }
  for (const std::size_t i : indices) {
    drawn.values << QPointF(shown.x[i], shown.y[i]);
    drawn.places << layout.place(shown.x[i], shown.y[i]);
    if (drawn.style.isArea) {
      drawn.upper << QPointF(shown.x[i], shown.yHigh[i]);
    }
  }
  return drawn;
}

ChartDrawing drawingOf(const Chart& chart, const View& view, const Palette& palette,
                       const DrawingSettings& settings) {
  ChartDrawing drawing;
  drawing.chart = frameOf(chart);
  drawing.palette = palette;
  drawing.font = settings.font;
  drawing.sentenceFont = settings.sentenceFont;
  drawing.isEmpty = chart.isEmpty();
  const QFontMetricsF metrics(settings.font, settings.device);
  drawing.layout = layoutOf(chart, view, settings.size, metrics);
  if (drawing.isEmpty) {
    return drawing;
  }
  for (const auto& series : chart.series) {
    drawing.series.push_back(drawnSeries(series, drawing.layout, palette));
  }
  widenModels(drawing, chart);
  if (chart.surface) {
    drawing.surface = surfaceImage(chart, drawing.layout.colours, drawing.layout.x, drawing.layout.y,
                                   settings.pixelsPerUnit);
    if (chart.kind == ChartKind::heightMap) {
      addContours(drawing, *chart.surface, metrics);
    }
  }
  placeLabels(drawing, chart, metrics);
  return drawing;
}

}  // namespace fettle::ui
