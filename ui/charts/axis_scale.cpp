#include "ui/charts/axis_scale.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fettle::ui {
namespace {

constexpr double roomBeside = 0.03, roomAbove = 0.06;  ///< parts of the range left free at its ends
constexpr double zeroBelow =
    0.35;  ///< an axis starts at zero when the lowest value is under this part of the highest

class Extent {
 public:
  explicit Extent(const Axis& axis) : m_logarithmic(axis.logarithmic) {}

  void add(double value) {
    if (std::isfinite(value) && (value > 0 || !m_logarithmic)) {
      m_low = std::min(m_low, value);
      m_high = std::max(m_high, value);
    }
  }

  void add(const std::vector<double>& values) {
    // The quick way for long series; the careful one only when something is not finite or cannot be shown.
    double low = m_low, high = m_high;
    for (const double value : values) {
      low = value < low ? value : low;
      high = value > high ? value : high;
    }
    if (std::isfinite(low) && std::isfinite(high) && (low > 0 || !m_logarithmic)) {
      m_low = low;
      m_high = high;
      return;
    }
    for (const double value : values) {
      add(value);
    }
  }

  Range exact() const {
    if (m_low > m_high) {
      return m_logarithmic ? Range{1, 10} : Range{0, 1};
    }
    if (m_low < m_high) {
      return {m_low, m_high};
    }
    if (m_logarithmic) {
      return {m_low / 2, m_low * 2};
    }
    const double half = m_low == 0 ? 1 : std::abs(m_low) * 0.05;
    return {m_low - half, m_high + half};
  }

  /// Half a place more than the things counted, at both ends.
  Range ofThings() const {
    const Range range = m_low > m_high ? Range{1, 1} : Range{m_low, m_high};
    return {range.from - 0.5, range.to + 0.5};
  }

  Range withRoom(double part, bool mayStartAtZero) const {
    const Range range = exact();
    if (m_logarithmic) {
      const double factor = std::pow(range.to / range.from, part);
      return {range.from / factor, range.to * factor};
    }
    const double room = part * range.size();
    if (mayStartAtZero && range.from >= 0 && range.from < zeroBelow * range.to) {
      return {0, range.to + room};
    }
    return {range.from - room, range.to + room};
  }

 private:
  bool m_logarithmic;
  double m_low = std::numeric_limits<double>::infinity();
  double m_high = -std::numeric_limits<double>::infinity();
};

bool isLine(SeriesRole role) {
  return role == SeriesRole::model || role == SeriesRole::trace || role == SeriesRole::comparison ||
         role == SeriesRole::band;
}

}  // namespace

AxisScale::AxisScale(Range values, Range places, bool logarithmic)
    : m_values(values), m_places(places), m_logarithmic(logarithmic) {
  m_from = linear(values.from);
  m_to = linear(values.to);
}

double AxisScale::linear(double value) const {
  return m_logarithmic ? std::log10(value) : value;
}

double AxisScale::place(double value) const {
  return m_places.from + (linear(value) - m_from) / (m_to - m_from) * m_places.size();
}

double AxisScale::value(double place) const {
  const double at = m_from + (place - m_places.from) / m_places.size() * (m_to - m_from);
  return m_logarithmic ? std::pow(10, at) : at;
}

Range placesInView(const AxisScale& scale, Range range) {
  const auto place = [&scale](double value) {
    return scale.place(std::clamp(value, scale.values().from, scale.values().to));
  };
  const auto [low, high] = std::minmax({place(range.from), place(range.to)});
  return {low, high};
}

bool hasEqualScales(const Chart& chart) {
  return chart.kind == ChartKind::bedPlan ||
         (chart.kind == ChartKind::heightMap && chart.x.unit == chart.y.unit && !chart.x.logarithmic &&
          !chart.y.logarithmic);
}

View wholeView(const Chart& chart) {
  Extent x(chart.x), y(chart.y);
  bool onlyLines = true;
  for (const auto& series : chart.series) {
    x.add(series.x);
    y.add(series.y);
    y.add(series.yHigh);
    onlyLines = onlyLines && isLine(series.role);
  }
  for (const auto& line : chart.lines) {
    (line.vertical ? x : y).add(line.at);
  }
  for (const auto& band : chart.bands) {
    Extent& extent = band.vertical ? x : y;
    extent.add(band.from);
    extent.add(band.to);
  }
  if (chart.kind == ChartKind::timeFrequency && chart.surface) {
    x.add(cellEdges(chart.surface->x));
    y.add(cellEdges(chart.surface->y));
    return {x.exact(), y.exact()};
  }
  if (chart.surface) {
    x.add(chart.surface->x);
    y.add(chart.surface->y);
  }
  if (hasEqualScales(chart)) {
    return {x.withRoom(roomBeside, false), y.withRoom(roomBeside, false)};
  }
  if (chart.x.whole) {
    return {x.ofThings(), y.withRoom(roomAbove, true)};
  }
  return {onlyLines ? x.exact() : x.withRoom(roomBeside, true), y.withRoom(roomAbove, true)};
}

std::vector<double> cellEdges(const std::vector<double>& middles) {
  const std::size_t count = middles.size();
  if (count < 2) {
    return count == 0 ? std::vector<double>{} : std::vector<double>{middles[0] - 0.5, middles[0] + 0.5};
  }
  std::vector<double> edges{middles[0] - (middles[1] - middles[0]) / 2};
  for (std::size_t i = 1; i < count; ++i) {
    edges.push_back((middles[i - 1] + middles[i]) / 2);
  }
  edges.push_back(middles[count - 1] + (middles[count - 1] - middles[count - 2]) / 2);
  return edges;
}

}  // namespace fettle::ui
