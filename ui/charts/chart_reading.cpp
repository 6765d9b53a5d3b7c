#include "ui/charts/chart_reading.h"

#include <QLineF>
#include <algorithm>
#include <cmath>

#include "ui/charts/chart_words.h"

namespace fettle::ui {
namespace {

constexpr double closeToNode = 7;  ///< on the picture

QString named(const Axis& axis, double value, const Ticks& ticks) {
  return QString::fromStdString(axis.label) + QLatin1Char(' ') + valueText(value, axis, ticks);
}

Reading pointReading(const Chart& chart, const ChartLayout& layout, const std::string& name, double x,
                     double y) {
  Reading reading;
  reading.place = layout.place(x, y);
  if (!name.empty()) {
    reading.lines << QString::fromStdString(name);
  }
  reading.lines << named(chart.x, x, layout.xTicks);
  if (chart.top && !layout.topTicks.at.empty()) {
    reading.lines << named(chart.top->axis, x * layout.topFactor, layout.topTicks);
  }
  reading.lines << named(chart.y, y, layout.yTicks);
  return reading;
}

Reading surfaceReading(const Chart& chart, const ChartLayout& layout, double x, double y, double z) {
  Reading reading = pointReading(chart, layout, {}, x, y);
  const Axis& axis = chart.surface->axis;
  reading.lines << (std::isfinite(z)
                        ? named(axis, z, layout.barTicks)
                        : ChartWords::tr("%1 not measured").arg(QString::fromStdString(axis.label)));
  return reading;
}

std::size_t nearestIndex(const std::vector<double>& values, double value) {
  const auto nearest = std::min_element(values.begin(), values.end(), [value](double a, double b) {
    return std::abs(a - value) < std::abs(b - value);
  });
  return static_cast<std::size_t>(nearest - values.begin());
}

/// Straight between the four points round a place; NaN where one is missing.
double between(const Surface& surface, double x, double y) {
  const auto lower = [](const std::vector<double>& nodes, double value) {
    const bool rises = nodes.front() < nodes.back();
    const auto after = std::partition_point(nodes.begin() + 1, nodes.end() - 1, [&](double node) {
      return rises ? node <= value : node >= value;
    });
    return static_cast<std::size_t>(after - nodes.begin()) - 1;
  };
  const std::size_t i = lower(surface.x, x), j = lower(surface.y, y);
  const double across = (x - surface.x[i]) / (surface.x[i + 1] - surface.x[i]);
  const double down = (y - surface.y[j]) / (surface.y[j + 1] - surface.y[j]);
  return std::lerp(std::lerp(surface.z[j][i], surface.z[j][i + 1], across),
                   std::lerp(surface.z[j + 1][i], surface.z[j + 1][i + 1], across), down);
}

bool isWithin(const std::vector<double>& nodes, double value) {
  const auto [low, high] = std::minmax(nodes.front(), nodes.back());
  return value >= low && value <= high;
}

std::optional<Reading> readingOnSurface(const Chart& chart, const ChartLayout& layout, QPointF place) {
  const Surface& surface = *chart.surface;
  const double x = layout.x.value(place.x()), y = layout.y.value(place.y());
  const bool isCells = chart.kind == ChartKind::timeFrequency;
  if (surface.x.empty() || surface.y.empty() || !isWithin(isCells ? cellEdges(surface.x) : surface.x, x) ||
      !isWithin(isCells ? cellEdges(surface.y) : surface.y, y)) {
    return std::nullopt;
  }
  const std::size_t i = nearestIndex(surface.x, x), j = nearestIndex(surface.y, y);
  const double distance = QLineF(place, layout.place(surface.x[i], surface.y[j])).length();
  if (isCells || distance <= closeToNode || surface.x.size() < 2 || surface.y.size() < 2) {
    return readingOf(chart, layout, 0, j * surface.x.size() + i);
  }
  Reading reading = surfaceReading(chart, layout, x, y, between(surface, x, y));
  reading.point = j * surface.x.size() + i;
  return reading;
}

bool isContinuous(SeriesRole role) {
  return role == SeriesRole::model || role == SeriesRole::comparison;
}

QPointF nearestOnPiece(QPointF from, QPointF to, QPointF place) {
  const QPointF along = to - from;
  const double square = QPointF::dotProduct(along, along);
  const double part =
      square > 0 ? std::clamp(QPointF::dotProduct(place - from, along) / square, 0.0, 1.0) : 0;
  return from + part * along;
}

/// The nearest point so far.
struct Nearest {
  double distance;
  std::optional<Reading> reading = std::nullopt;
};

/// The nearest of single points.
void searchPoints(const Chart& chart, const ChartLayout& layout, std::size_t index, QPointF place,
                  Nearest& nearest) {
  const Series& series = chart.series[index];
  const QRectF visible = layout.plot.adjusted(-1, -1, 1, 1);
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < series.x.size(); ++i) {
    const double across = layout.x.place(series.x[i]) - place.x();
    if (!(std::abs(across) < nearest.distance)) {
      continue;  // a long trace is searched at every move of the pointer
    }
    const QPointF here = layout.place(series.x[i], series.y[i]);
    const double distance = std::hypot(across, here.y() - place.y());
    if (distance < nearest.distance && visible.contains(here)) {
      nearest.distance = distance;
      found = i;
    }
  }
  if (found) {
    nearest.reading = readingOf(chart, layout, index, *found);
  }
}

/// The nearest place on a line.
void searchLine(const Chart& chart, const ChartLayout& layout, std::size_t index, QPointF place,
                Nearest& nearest) {
  const Series& series = chart.series[index];
  const QRectF visible = layout.plot.adjusted(-1, -1, 1, 1);
  for (std::size_t i = 1; i < series.x.size(); ++i) {
    const QPointF on = nearestOnPiece(layout.place(series.x[i - 1], series.y[i - 1]),
                                      layout.place(series.x[i], series.y[i]), place);
    const double distance = std::hypot(on.x() - place.x(), on.y() - place.y());
    if (distance < nearest.distance && visible.contains(on)) {
      nearest.distance = distance;
      nearest.reading =
          pointReading(chart, layout, series.name, layout.x.value(on.x()), layout.y.value(on.y()));
      nearest.reading->series = index;
      nearest.reading->point = i;
    }
  }
}

QString rangeText(const Axis& axis, const Range& range) {
  const Ticks ticks = ticksOf(axis, range, 6);
  return ChartWords::tr("%1 from %2 to %3")
      .arg(QString::fromStdString(axis.label), valueText(range.from, axis, ticks),
           valueText(range.to, axis, ticks));
}

QString seriesText(const Series& series) {
  const QString count =
      series.x.size() == 1 ? ChartWords::tr("1 point") : ChartWords::tr("%1 points").arg(series.x.size());
  return series.name.empty() ? count
                             : QString::fromStdString(series.name) + QStringLiteral(" (") + count + ')';
}

}  // namespace

std::optional<Reading> readingAt(const Chart& chart, const ChartLayout& layout, QPointF place,
                                 double reach) {
  if (!layout.plot.contains(place) || chart.isEmpty()) {
    return std::nullopt;
  }
  if (chart.surface) {
    return readingOnSurface(chart, layout, place);
  }
  Nearest nearest{reach};
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const bool isLine = isContinuous(chart.series[i].role);
    (isLine ? searchLine : searchPoints)(chart, layout, i, place, nearest);
  }
  return nearest.reading;
}

std::optional<Reading> readingOf(const Chart& chart, const ChartLayout& layout, std::size_t series,
                                 std::size_t point) {
  if (point >= pointCount(chart, series)) {
    return std::nullopt;
  }
  Reading reading;
  if (chart.surface) {
    const Surface& surface = *chart.surface;
    const std::size_t i = point % surface.x.size(), j = point / surface.x.size();
    reading = surfaceReading(chart, layout, surface.x[i], surface.y[j], surface.z[j][i]);
  } else {
    const Series& shown = chart.series[series];
    reading = pointReading(chart, layout, shown.name, shown.x[point], shown.y[point]);
  }
  reading.series = series;
  reading.point = point;
  return reading;
}

std::size_t pointCount(const Chart& chart, std::size_t series) {
  if (chart.surface) {
    return chart.surface->x.size() * chart.surface->y.size();
  }
  return series < chart.series.size() ? chart.series[series].x.size() : 0;
}

QString chartSummary(const Chart& chart, const View& view) {
  const QString title = QString::fromStdString(chart.title);
  if (chart.isEmpty()) {
    return ChartWords::tr("%1: nothing to draw yet. %2")
        .arg(title, QString::fromStdString(chart.whenEmpty));
  }
  QStringList parts{rangeText(chart.x, view.x), rangeText(chart.y, view.y)};
  if (chart.surface) {
    parts << rangeText(chart.surface->axis, SurfaceColours(*chart.surface).range());
  }
  for (const auto& series : chart.series) {
    parts << seriesText(series);
  }
  for (const auto& line : chart.lines) {
    parts << QString::fromStdString(line.label);
  }
  return ChartWords::tr("%1: %2.").arg(title, parts.join(QStringLiteral("; ")));
}

}  // namespace fettle::ui
