#pragma once
#include <QFont>
#include <QLineF>
#include <QPolygonF>
#include <QString>
#include <vector>

#include "ui/charts/chart_layout.h"
#include "ui/charts/series_style.h"

namespace fettle::ui {

/// One series, thinned to what the picture can show.
struct DrawnSeries {
  SeriesStyle style;
  QList<QPointF> values, upper;  ///< in units of the axes; `upper` only of a band
  QPolygonF places;              ///< the values on the picture
};

/// A word on the plot.
struct DrawnLabel {
  QString text;
  QColor colour;
  QRectF place;
  int series = -1;         ///< of a line: a sample of it stands before the text
  QLineF leader = {};      ///< to one of the marks it names
  bool isCovered = false;  ///< something lies under it
};

/// A line of equal height.
struct DrawnContour {
  double level = 0;
  QPolygonF places;
};

/// The number on a line of equal height.
struct DrawnLevel {
  double level = 0;
  QString text;
  QRectF place;
};

/// A chart worked out for one size and one set of colours: everything that is needed to paint it.
struct ChartDrawing {
  Chart chart;  ///< without its series and surface, which are drawn already
  Palette palette;
  QFont font, sentenceFont;
  ChartLayout layout;
  std::vector<DrawnSeries> series;
  std::vector<DrawnLabel> labels;
  SurfaceImage surface;
  std::vector<DrawnContour> contours;
  std::vector<DrawnLevel> levels;
  bool isEmpty = false;
};

}  // namespace fettle::ui
