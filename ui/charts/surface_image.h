#pragma once
#include <QImage>
#include <QRectF>

#include "ui/charts/axis_scale.h"
#include "ui/theme/colour_map.h"

namespace fettle::ui {

/// The colour of each value of a surface.
class SurfaceColours {
 public:
  SurfaceColours() = default;
  /// From the lowest to the highest finite value; a difference runs equally far to both sides of zero.
  explicit SurfaceColours(const Surface& surface);

  /// Place on the map, 0 to 1; NaN where there is no value or the scale cannot show it.
  double part(double value) const;
  QRgb colour(double value) const;
  /// Colour of a place on the map.
  QRgb colourOfPart(double part) const { return colourAt(*m_table, part); }
  /// Black or white, whichever stands out from the colour of a value.
  QColor contrasting(double value) const;
  const Range& range() const { return m_range; }

 private:
  Range m_range;
  double m_from = 0, m_to = 1;
  bool m_logarithmic = false;
  const ColourTable* m_table = &heightColours();
};

/// A picture of the surface of a chart and the part of the chart it covers.
struct SurfaceImage {
  QImage image;
  QRectF area;  ///< empty when nothing of the surface is in view
};

/// Draws the surface where it is in view. Height maps run straight between the points of their net and
/// leave cells blank that lack a corner; time-frequency pictures fill cells round their middles, and where
/// several fall on one pixel the highest shows. `pixelsPerUnit`: pixels of the image per unit of `x` and
/// `y` places.
SurfaceImage surfaceImage(const Chart& chart, const SurfaceColours& colours, const AxisScale& x,
                          const AxisScale& y, double pixelsPerUnit);

}  // namespace fettle::ui
