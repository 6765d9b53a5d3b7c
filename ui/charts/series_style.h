#pragma once
#include <QPainter>
#include <QPen>

#include "core/steps/contract/chart.h"
#include "ui/theme/palette.h"

namespace fettle::ui {

enum class Mark { none, circle, diamond, triangle, triangleDown, square, dot, smallCross, cross };

/// How a series is drawn: by its role; its hue gives colour, the shape of hollow marks and, in print,
/// dashes.
struct SeriesStyle {
  Mark mark = Mark::none;
  double markSize = 7;  ///< width
  QPen pen;             ///< of the marks or of the line
  QColor fill = Qt::transparent;
  bool isLine = false, isClosed = false, isArea = false;
};

SeriesStyle styleOf(const Series& series, const Palette& palette);

/// Draws one mark with the pen and brush of the painter.
void drawMark(QPainter& painter, Mark mark, QPointF middle, double size);

/// A piece of the series `width` wide, as it stands before its name.
void drawSample(QPainter& painter, const SeriesStyle& style, const QRectF& place);

}  // namespace fettle::ui
