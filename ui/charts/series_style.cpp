#include "ui/charts/series_style.h"

#include <QPolygonF>
#include <array>

namespace fettle::ui {
namespace {

constexpr std::array hollowMarks{Mark::circle, Mark::diamond, Mark::triangle, Mark::triangleDown};

QList<qreal> dashes(const Series& series, const Palette& palette) {
  if (series.role == SeriesRole::comparison) {
    return series.hue % 2 == 0 || !palette.dashesByHue ? QList<qreal>{5, 3} : QList<qreal>{5, 3, 1, 3};
  }
  static const std::array<QList<qreal>, 4> byHue{QList<qreal>{}, QList<qreal>{9, 3, 2, 3},
                                                 QList<qreal>{2, 2}, QList<qreal>{9, 2, 2, 2, 2, 2}};
  return palette.dashesByHue ? byHue[static_cast<std::size_t>(std::abs(series.hue)) % byHue.size()]
                             : QList<qreal>{};
}

QPen linePen(const Series& series, const Palette& palette, double width) {
  QPen pen(palette.series(series.hue), width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  if (const auto pattern = dashes(series, palette); !pattern.isEmpty()) {
    pen.setCapStyle(Qt::FlatCap);
    pen.setDashPattern(pattern);
  }
  return pen;
}

SeriesStyle lineStyle(const Series& series, const Palette& palette, double width) {
  SeriesStyle style;
  style.pen = linePen(series, palette, width);
  style.isLine = true;
  style.isClosed = series.role == SeriesRole::outline;
  return style;
}

SeriesStyle markStyle(Mark mark, double size, const QColor& colour, double width) {
  SeriesStyle style;
  style.mark = mark;
  style.markSize = size;
  style.pen = QPen(colour, width);
  return style;
}

SeriesStyle bandStyle(const QColor& colour) {
  SeriesStyle style;
  style.isArea = true;
  style.pen = QPen(colour, 1);
  style.fill = withOpacity(colour, 0.18);
  return style;
}

SeriesStyle dotStyle(const QColor& colour) {
  SeriesStyle style = markStyle(Mark::dot, 5, colour, 1);
  style.fill = colour;
  return style;
}

}  // namespace

SeriesStyle styleOf(const Series& series, const Palette& palette) {
  const QColor& colour = palette.series(series.hue);
  switch (series.role) {
    case SeriesRole::measured:
      return markStyle(hollowMarks[static_cast<std::size_t>(std::abs(series.hue)) % hollowMarks.size()], 7,
                       colour, 1.5);
    case SeriesRole::excluded:
      return markStyle(Mark::smallCross, 5, palette.dim, 1);
    case SeriesRole::model:
      return lineStyle(series, palette, 2);
    case SeriesRole::trace:
      return lineStyle(series, palette, 1);
    case SeriesRole::comparison:
      return lineStyle(series, palette, 1.5);
    case SeriesRole::band:
      return bandStyle(colour);
    case SeriesRole::outline:
      return lineStyle(series, palette, 1.5);
    case SeriesRole::planned:
      return markStyle(Mark::square, 8, colour, 1.2);
    case SeriesRole::reached:
      return dotStyle(colour);
    case SeriesRole::fault:
      return markStyle(Mark::cross, 9, palette.fault, 2);
  }
  return {};
}

void drawMark(QPainter& painter, Mark mark, QPointF middle, double size) {
  const double half = size / 2;
  const auto at = [&](double x, double y) { return middle + QPointF(x * half, y * half); };
  switch (mark) {
    case Mark::none:
      break;
    case Mark::circle:
    case Mark::dot:
      painter.drawEllipse(middle, half, half);
      break;
    case Mark::diamond:
      painter.drawPolygon(QPolygonF{at(0, -1.2), at(1.2, 0), at(0, 1.2), at(-1.2, 0)});
      break;
    case Mark::triangle:
      painter.drawPolygon(QPolygonF{at(0, -1.2), at(1.1, 0.8), at(-1.1, 0.8)});
      break;
    case Mark::triangleDown:
      painter.drawPolygon(QPolygonF{at(0, 1.2), at(1.1, -0.8), at(-1.1, -0.8)});
      break;
    case Mark::square:
      painter.drawRect(QRectF(at(-1, -1), at(1, 1)));
      break;
    case Mark::smallCross:
    case Mark::cross:
      painter.drawLine(at(-1, -1), at(1, 1));
      painter.drawLine(at(-1, 1), at(1, -1));
      break;
  }
}

void drawSample(QPainter& painter, const SeriesStyle& style, const QRectF& place) {
  painter.setPen(style.isArea ? Qt::NoPen : style.pen);
  painter.setBrush(style.fill);
  if (style.isLine) {
    painter.drawLine(QPointF(place.left(), place.center().y()), QPointF(place.right(), place.center().y()));
  } else if (style.isArea) {
    painter.drawRect(place.adjusted(0, 2, 0, -2));
  } else {
    drawMark(painter, style.mark, place.center(), style.markSize);
  }
}

}  // namespace fettle::ui
