#pragma once
#include <QFontMetricsF>
#include <QRectF>

#include "ui/charts/axis_ticks.h"
#include "ui/charts/surface_image.h"

namespace fettle::ui {

/// Where the parts of a chart stand on a picture of a given size.
struct ChartLayout {
  QSizeF size;
  QRectF plot;  ///< where the data are
  AxisScale x, y;
  Ticks xTicks, yTicks;
  Ticks topTicks;  ///< in values of the top axis: factor·x
  double topFactor = 1;
  QRectF bar;  ///< the scale of colours, empty when there is no surface
  SurfaceColours colours;
  AxisScale barScale;
  Ticks barTicks;
  double lineHeight = 0;  ///< of a line of text

  View view() const { return {x.values(), y.values()}; }
  QPointF place(double atX, double atY) const { return {x.place(atX), y.place(atY)}; }
};

/// Room for titles, marks and their labels first, the rest for the data; `metrics` are those of the labels.
/// Where both axes are drawn to one scale the plot is as large as their ranges allow.
ChartLayout layoutOf(const Chart& chart, const View& view, QSizeF size, const QFontMetricsF& metrics);

}  // namespace fettle::ui
