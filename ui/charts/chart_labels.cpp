#include "ui/charts/chart_labels.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "ui/charts/label_placement.h"

namespace fettle::ui {
namespace {

constexpr double beside = 2;  ///< between a line and its label
constexpr int rowsTried = 8;  ///< below each other, beside an upright line
constexpr std::size_t mostMarkAnchors = 40;
constexpr double nearBy = 12;  ///< a label so near its line needs no leader
constexpr double clearlyApart = 40, mostDoubt = 0.15, farFromEnd = 0.05;

/// From the nearest place on the edge of a label to what it names.
QLineF leaderOf(const LabelPlace& place) {
  const QRectF area = place.area.adjusted(0, 2, 0, -2);
  const QPointF from(std::clamp(place.anchor.x(), area.left(), area.right()),
                     std::clamp(place.anchor.y(), area.top(), area.bottom()));
  return {from, place.anchor};
}

class Labeller {
 public:
  Labeller(ChartDrawing& drawing, const QFontMetricsF& metrics)
      : m_drawing(drawing), m_metrics(metrics), m_occupancy(drawing.layout.plot) {}

  Occupancy& occupancy() { return m_occupancy; }

  QSizeF sizeOf(const QString& text, bool hasSample) const {
    return {
        m_metrics.horizontalAdvance(text) + 2 * labelMargin + (hasSample ? sampleWidth + labelMargin : 0),
        m_metrics.height()};
  }

  DrawnLabel* put(const QString& text, const QColor& colour, const std::vector<LabelPlace>& places) {
    const auto place = m_occupancy.best(places);
    if (!place) {
      return nullptr;
    }
    DrawnLabel label{text, readable(colour, m_drawing.palette.panel), place->area};
    label.isCovered =
        m_occupancy.covered(place->area).value_or(0) > 0 || m_drawing.chart.surface.has_value();
    label.leader = leaderOf(*place);
    m_occupancy.addLabel(place->area);
    m_drawing.labels.push_back(label);
    return &m_drawing.labels.back();
  }

  /// Text no wider than the plot.
  QString fitted(const std::string& text) const {
    return m_metrics.elidedText(QString::fromStdString(text), Qt::ElideRight,
                                m_drawing.layout.plot.width() - 3 * sampleWidth);
  }

 private:
  ChartDrawing& m_drawing;
  QFontMetricsF m_metrics;
  Occupancy m_occupancy;
};

/// Right, then left of an upright line or interval, from the top downwards; within it where that is wide.
std::vector<LabelPlace> placesBesideUpright(double left, double right, const QRectF& plot, QSizeF size) {
  std::vector<LabelPlace> places;
  for (int row = 0; row < rowsTried; ++row) {
    const double top = plot.top() + beside + row * size.height();
    if (right - left > size.width() + 2 * beside) {
      places.push_back({QRectF(QPointF(right - beside - size.width(), top), size)});
      places.push_back({QRectF(QPointF(left + beside, top), size)});
    }
    places.push_back({QRectF(QPointF(right + beside, top), size)});
    places.push_back({QRectF(QPointF(left - beside - size.width(), top), size)});
  }
  return places;
}

/// Below, then above a level line or interval, at its left end, right end and between.
std::vector<LabelPlace> placesBesideLevel(double top, double bottom, const QRectF& plot, QSizeF size) {
  const double room = plot.width() - size.width() - 2 * beside;
  std::vector<LabelPlace> places;
  for (const double part : {0.0, 1.0, 0.25, 0.5, 0.75}) {
    const double left = plot.left() + beside + part * room;
    places.push_back({QRectF(QPointF(left, bottom + beside), size)});
    places.push_back({QRectF(QPointF(left, top - beside - size.height()), size)});
  }
  return places;
}

void occupyLimits(Occupancy& occupancy, const Chart& chart, const ChartLayout& layout) {
  const QRectF& plot = layout.plot;
  for (const auto& line : chart.lines) {
    const AxisScale& scale = line.vertical ? layout.x : layout.y;
    if (!scale.values().contains(line.at)) {
      continue;
    }
    const double at = scale.place(line.at);
    occupancy.addLine(line.vertical ? QPolygonF{QPointF(at, plot.top()), QPointF(at, plot.bottom())}
                                    : QPolygonF{QPointF(plot.left(), at), QPointF(plot.right(), at)});
  }
}

void labelLimits(Labeller& labeller, const Chart& chart, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  const auto putLimit = [&](const QString& text, const QColor& colour,
                            const std::vector<LabelPlace>& places) {
    if (DrawnLabel* const label = labeller.put(text, colour, places)) {
      label->leader = {};
    }
  };
  for (const auto& line : chart.lines) {
    const AxisScale& scale = line.vertical ? layout.x : layout.y;
    if (line.label.empty() || !scale.values().contains(line.at)) {
      continue;
    }
    const QString text = labeller.fitted(line.label);
    const double at = scale.place(line.at);
    const QSizeF size = labeller.sizeOf(text, false);
    putLimit(text, drawing.palette.fault,
             line.vertical ? placesBesideUpright(at, at, layout.plot, size)
                           : placesBesideLevel(at, at, layout.plot, size));
  }
  for (const auto& band : chart.bands) {
    const QString text = labeller.fitted(band.label);
    const AxisScale& scale = band.vertical ? layout.x : layout.y;
    const auto [low, high] = placesInView(scale, {band.from, band.to});
    const QSizeF size = labeller.sizeOf(text, false);
    if (!text.isEmpty()) {
      putLimit(text, drawing.palette.accent,
               band.vertical ? placesBesideUpright(low, high, layout.plot, size)
                             : placesBesideLevel(low, high, layout.plot, size));
    }
  }
}

std::vector<QPointF> anchorsOf(const DrawnSeries& series, const QRectF& plot) {
  if (series.style.isLine) {
    return anchorsAlong(series.places);
  }
  std::vector<QPointF> inside;
  std::copy_if(series.places.rbegin(), series.places.rend(), std::back_inserter(inside),
               [&plot](QPointF place) { return plot.contains(place); });
  const std::size_t stride = inside.size() / mostMarkAnchors + 1;
  std::vector<QPointF> anchors;
  for (std::size_t i = 0; i < inside.size(); i += stride) {
    anchors.push_back(inside[i]);
  }
  return anchors;
}

/// The square of the distance to the nearest point of another series, at most that of clearlyApart.
double squareToOthers(const ChartDrawing& drawing, std::size_t index, QPointF anchor) {
  double square = clearlyApart * clearlyApart;
  for (std::size_t other = 0; other < drawing.series.size(); ++other) {
    if (other == index || drawing.series[other].style.isArea) {
      continue;
    }
    for (const auto& point : drawing.series[other].places) {
      const QPointF apart = point - anchor;
      square = std::min(square, QPointF::dotProduct(apart, apart));
    }
  }
  return square;
}

/// Names beside other series may be taken for theirs, and they belong near the end of a line.
void addDoubts(std::vector<LabelPlace>& places, const ChartDrawing& drawing, std::size_t index) {
  std::optional<QPointF> before;
  double doubt = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (before != places[i].anchor) {
      before = places[i].anchor;
      const double clearance = std::sqrt(squareToOthers(drawing, index, *before)) / clearlyApart;
      doubt = mostDoubt * (1 - clearance) +
              farFromEnd * static_cast<double>(i) / static_cast<double>(places.size());
    }
    places[i].doubt += doubt;
  }
}

void labelSeries(Labeller& labeller, const Chart& chart, const ChartDrawing& drawing) {
  std::set<std::string> named{""};
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const DrawnSeries& series = drawing.series[i];
    if (series.places.isEmpty() || !named.insert(chart.series[i].name).second) {
      continue;
    }
    const QString text = labeller.fitted(chart.series[i].name);
    const bool hasSample = series.style.mark == Mark::none;
    auto places = placesBeside(anchorsOf(series, drawing.layout.plot), labeller.sizeOf(text, hasSample));
    addDoubts(places, drawing, i);
    DrawnLabel* const label = labeller.put(text, series.style.pen.color().rgb(), places);
    if (label != nullptr && hasSample) {
      label->series = static_cast<int>(i);
      label->leader = label->leader.length() > nearBy ? label->leader : QLineF();
    }
  }
}

}  // namespace

void placeLabels(ChartDrawing& drawing, const Chart& chart, const QFontMetricsF& metrics) {
  Labeller labeller(drawing, metrics);
  for (const auto& series : drawing.series) {
    if (series.style.isLine) {
      labeller.occupancy().addLine(series.places);
    }
    for (const auto& place : series.style.mark == Mark::none ? QPolygonF() : series.places) {
      labeller.occupancy().addMark(place, series.style.markSize);
    }
  }
  for (const auto& level : drawing.levels) {
    labeller.occupancy().addLabel(level.place);
  }
  occupyLimits(labeller.occupancy(), chart, drawing.layout);
  labelLimits(labeller, chart, drawing);
  if (chart.series.size() > 1) {
    labelSeries(labeller, chart, drawing);
  }
}

}  // namespace fettle::ui
