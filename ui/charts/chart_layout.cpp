#include "ui/charts/chart_layout.h"

#include <algorithm>
#include <cmath>

namespace fettle::ui {
namespace {

constexpr double edge = 8, gap = 4, barWidth = 12;
constexpr double besideLastLabel = 20;  ///< half of a label that stands at the right end of the axis
constexpr double cornerHeight = 24;     ///< of the button over the upper right corner
constexpr double acrossTick = 64, downTick = 46;  ///< least distance of marks
constexpr double betweenLabels = 14, acrossName = 44;

double widest(const QStringList& labels, const QFontMetricsF& metrics) {
  double width = 0;
  for (const auto& label : labels) {
    width = std::max(width, metrics.horizontalAdvance(label));
  }
  return width;
}

int most(double length, double distance) {
  return std::clamp(static_cast<int>(length / distance), 2, 12);
}

/// Labels side by side need as much as the widest of them.
Ticks ticksAcross(const Axis& axis, Range range, double width, const QFontMetricsF& metrics) {
  Ticks ticks;
  if (!axis.names.empty()) {  // names are rather shortened than left out
    ticks = ticksOf(axis, range, std::max(1, static_cast<int>(width / acrossName)));
    const double apart = ticks.at.size() > 1 ? ticks.at[1] - ticks.at[0] : range.size();
    for (auto& label : ticks.labels) {
      label = metrics.elidedText(label, Qt::ElideRight, width * apart / range.size() - betweenLabels);
    }
    return ticks;
  }
  for (int maximum = most(width, acrossTick); maximum >= 2; --maximum) {
    ticks = ticksOf(axis, range, maximum);
    const auto labelled = ticks.labels.size() - ticks.labels.count(QString());
    if (static_cast<double>(labelled) * (widest(ticks.labels, metrics) + betweenLabels) <= width) {
      break;
    }
  }
  return ticks;
}

/// As large as fits while a unit of x is as long as a unit of y.
QRectF withEqualScales(const QRectF& room, const View& view) {
  const double scale = std::min(room.width() / view.x.size(), room.height() / view.y.size());
  QRectF plot(0, 0, std::floor(scale * view.x.size()), std::floor(scale * view.y.size()));
  plot.moveCenter(room.center());
  return plot.translated(std::round(plot.left()) - plot.left(), std::round(plot.top()) - plot.top());
}

void layOutBar(ChartLayout& layout, const Axis& axis) {
  layout.bar = QRectF(layout.plot.right() + 3 * gap, layout.plot.top(), barWidth, layout.plot.height());
  layout.barScale =
      AxisScale(layout.colours.range(), {layout.bar.bottom(), layout.bar.top()}, axis.logarithmic);
}

}  // namespace

ChartLayout layoutOf(const Chart& chart, const View& view, QSizeF size, const QFontMetricsF& metrics) {
  ChartLayout layout;
  layout.size = size;
  layout.lineHeight = metrics.height();
  const double line = metrics.height();
  const bool hasTop = chart.top && chart.top->factor > 0;
  const double above = hasTop ? cornerHeight + line + gap : cornerHeight;
  const double below = edge + 2 * line + 2 * gap;
  const double height = std::max(size.height() - above - below, 1.0);
  layout.yTicks = ticksOf(chart.y, view.y, most(height, downTick));
  const double left = edge + line + gap + widest(layout.yTicks.labels, metrics) + gap + 2;
  double right = besideLastLabel;
  if (chart.surface) {
    layout.colours = SurfaceColours(*chart.surface);
    layout.barTicks = ticksOf(chart.surface->axis, layout.colours.range(), most(height, downTick));
    right = 4 * gap + barWidth + widest(layout.barTicks.labels, metrics) + gap + line + edge;
  }
  const QRectF room(std::ceil(left), above, std::max(std::floor(size.width() - left - right), 1.0),
                    std::floor(height));
  layout.plot = hasEqualScales(chart) ? withEqualScales(room, view) : room;
  layout.xTicks = ticksAcross(chart.x, view.x, layout.plot.width(), metrics);
  if (hasTop) {
    layout.topFactor = chart.top->factor;
    layout.topTicks = ticksAcross({{}, {}, chart.x.logarithmic},
                                  {view.x.from * layout.topFactor, view.x.to * layout.topFactor},
                                  layout.plot.width(), metrics);
  }
  layout.x = AxisScale(view.x, {layout.plot.left(), layout.plot.right()}, chart.x.logarithmic);
  layout.y = AxisScale(view.y, {layout.plot.bottom(), layout.plot.top()}, chart.y.logarithmic);
  if (chart.surface) {
    layOutBar(layout, chart.surface->axis);
  }
  return layout;
}

}  // namespace fettle::ui
