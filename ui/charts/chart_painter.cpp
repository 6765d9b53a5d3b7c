#include "ui/charts/chart_painter.h"

#include <QPainter>
#include <algorithm>

#include "ui/charts/chart_labels.h"

namespace fettle::ui {
namespace {

constexpr double afterTick = 5;  ///< between the plot and the labels of its marks
constexpr double tickLength = 4;
constexpr double leaderEnd = 5;    ///< a leader stops this short of the middle of its mark
constexpr double wideBand = 0.15;  ///< part of the plot: a wider interval is tinted less
constexpr double besidePlot = 8;   ///< least distance of words from the edge of the chart

/// One-pixel lines are sharp without smoothing.
void drawSharpLine(QPainter& painter, QPointF from, QPointF to) {
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.drawLine(from, to);
  painter.setRenderHint(QPainter::Antialiasing, true);
}

void paintBands(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  painter.setPen(Qt::NoPen);
  const QRectF& plot = layout.plot;
  for (const auto& band : drawing.chart.bands) {
    const Range shown = placesInView(band.vertical ? layout.x : layout.y, {band.from, band.to});
    QRectF area = band.vertical ? QRectF(QPointF(shown.from, plot.top()), QPointF(shown.to, plot.bottom()))
                                : QRectF(QPointF(plot.left(), shown.from), QPointF(plot.right(), shown.to));
    // An interval narrower than a line is still seen.
    area.adjust(area.width() < 2 ? -1 : 0, area.height() < 2 ? -1 : 0, area.width() < 2 ? 1 : 0,
                area.height() < 2 ? 1 : 0);
    const bool isWide = area.width() * area.height() > wideBand * plot.width() * plot.height();
    painter.setBrush(withOpacity(drawing.palette.accent, isWide ? 0.08 : 0.2));
    painter.drawRect(area & plot);
  }
}

void paintGrid(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  const QRectF& plot = layout.plot;
  painter.setPen(QPen(drawing.palette.line, 1));
  for (const double at : layout.xTicks.at) {
    drawSharpLine(painter, {layout.x.place(at), plot.top()}, {layout.x.place(at), plot.bottom()});
  }
  for (const double at : layout.yTicks.at) {
    drawSharpLine(painter, {plot.left(), layout.y.place(at)}, {plot.right(), layout.y.place(at)});
  }
}

void paintContours(QPainter& painter, const ChartDrawing& drawing) {
  const SurfaceColours& colours = drawing.layout.colours;
  painter.save();
  painter.setClipRect(drawing.layout.plot, Qt::IntersectClip);
  painter.setBrush(Qt::NoBrush);
  for (const auto& contour : drawing.contours) {
    QPen pen(withOpacity(colours.contrasting(contour.level), 0.55), 1);
    if (drawing.chart.surface->difference && contour.level < 0) {
      pen.setDashPattern({4, 3});  // the sign is seen without colours
    }
    painter.setPen(pen);
    painter.drawPolyline(contour.places);
  }
  painter.restore();
  for (const auto& level : drawing.levels) {
    // The colour of the level itself makes the gap in the line.
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor::fromRgba(colours.colour(level.level)));
    painter.drawRoundedRect(level.place, 3, 3);
    painter.setPen(colours.contrasting(level.level));
    painter.drawText(level.place, Qt::AlignCenter, level.text);
  }
}

void paintLimits(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  const QRectF& plot = layout.plot;
  for (const auto& line : drawing.chart.lines) {
    const AxisScale& scale = line.vertical ? layout.x : layout.y;
    if (!scale.values().contains(line.at)) {
      continue;
    }
    QPen pen(drawing.palette.fault, 1);
    if (!line.vertical) {
      pen.setDashPattern({5, 4});  // never taken for a line of the grid
    }
    painter.setPen(pen);
    const double at = scale.place(line.at);
    if (line.vertical) {
      drawSharpLine(painter, {at, plot.top()}, {at, plot.bottom()});
    } else {
      drawSharpLine(painter, {plot.left(), at}, {plot.right(), at});
    }
  }
}

void paintMarksOf(QPainter& painter, const DrawnSeries& series, const QRectF& visible) {
  for (const auto& place : series.places) {
    if (visible.contains(place)) {
      drawMark(painter, series.style.mark, place, series.style.markSize);
    }
  }
}

void paintMarks(QPainter& painter, const ChartDrawing& drawing) {
  const QRectF visible = drawing.layout.plot.adjusted(-1, -1, 1, 1);
  for (const auto& series : drawing.series) {
    if (series.style.mark == Mark::none) {
      continue;
    }
    if (drawing.chart.surface) {
      // No colour of a series stands out from every colour of a map: a light rim does.
      painter.setPen(QPen(withOpacity(Palette::print().panel, 0.8), series.style.pen.widthF() + 2));
      painter.setBrush(Qt::NoBrush);
      paintMarksOf(painter, series, visible);
    }
    painter.setPen(series.style.pen);
    painter.setBrush(series.style.fill);
    paintMarksOf(painter, series, visible);
  }
}

/// Grounds of labels that lie on nothing but the grid: painted under the lines, so that they hide no data.
void paintFreeGrounds(QPainter& painter, const ChartDrawing& drawing) {
  painter.setPen(Qt::NoPen);
  painter.setBrush(drawing.palette.panel);
  for (const auto& label : drawing.labels) {
    if (!label.isCovered) {
      painter.drawRect(label.place);
    }
  }
}

void paintLabel(QPainter& painter, const ChartDrawing& drawing, const DrawnLabel& label) {
  if (label.isCovered) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(withOpacity(drawing.palette.panel, 0.75));
    painter.drawRoundedRect(label.place, 2, 2);
  }
  if (!label.leader.isNull()) {
    const double length = label.leader.length();
    painter.setPen(QPen(withOpacity(label.colour, 0.6), 1));
    painter.drawLine(label.leader.p1(),
                     label.leader.pointAt(std::max(1 - leaderEnd / std::max(length, 1.0), 0.0)));
  }
  QRectF text = label.place.adjusted(labelMargin, 0, 0, 0);
  if (label.series >= 0) {
    drawSample(painter, drawing.series[static_cast<std::size_t>(label.series)].style,
               {text.topLeft(), QSizeF(sampleWidth, text.height())});
    text.adjust(sampleWidth + labelMargin, 0, 0, 0);
  }
  painter.setPen(label.colour);
  painter.drawText(text, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, label.text);
}

/// Words about a point, moved so that they stay on the chart.
void drawBeside(QPainter& painter, const ChartDrawing& drawing, QPointF middle, const QString& text) {
  const double width = painter.fontMetrics().horizontalAdvance(text) + 2;
  const double rightmost = std::max(drawing.layout.size.width() - besidePlot / 2 - width, 0.0);
  QRectF place(0, 0, width, drawing.layout.lineHeight);
  place.moveCenter(middle);
  place.moveLeft(std::clamp(place.left(), 0.0, rightmost));
  painter.drawText(place, Qt::AlignCenter | Qt::TextDontClip, text);
}

void drawUpright(QPainter& painter, const ChartDrawing& drawing, double middleX, const QString& text) {
  const ChartLayout& layout = drawing.layout;
  painter.save();
  painter.translate(middleX, layout.plot.center().y());
  painter.rotate(-90);
  const double length = layout.size.height() - besidePlot;
  const QString shown = painter.fontMetrics().elidedText(text, Qt::ElideRight, static_cast<int>(length));
  painter.drawText(QRectF(-length / 2, -layout.lineHeight / 2, length, layout.lineHeight),
                   Qt::AlignCenter | Qt::TextDontClip, shown);
  painter.restore();
}

void paintTickLabels(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  const QRectF& plot = layout.plot;
  const double line = layout.lineHeight;
  painter.setPen(drawing.palette.text);
  for (std::size_t i = 0; i < layout.xTicks.at.size(); ++i) {
    drawBeside(painter, drawing,
               {layout.x.place(layout.xTicks.at[i]), plot.bottom() + afterTick + line / 2},
               layout.xTicks.labels[static_cast<qsizetype>(i)]);
  }
  for (std::size_t i = 0; i < layout.yTicks.at.size(); ++i) {
    const double middle = layout.y.place(layout.yTicks.at[i]);
    painter.drawText(QRectF(0, middle - line / 2, plot.left() - afterTick, line),
                     Qt::AlignRight | Qt::AlignVCenter | Qt::TextDontClip,
                     layout.yTicks.labels[static_cast<qsizetype>(i)]);
  }
  painter.setPen(drawing.palette.dim);
  for (std::size_t i = 0; i < layout.topTicks.at.size(); ++i) {
    const double at = layout.x.place(layout.topTicks.at[i] / layout.topFactor);
    drawSharpLine(painter, {at, plot.top() - tickLength}, {at, plot.top()});
    drawBeside(painter, drawing, {at, plot.top() - afterTick - line / 2},
               layout.topTicks.labels[static_cast<qsizetype>(i)]);
  }
}

void paintTitles(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  const QRectF& plot = layout.plot;
  const double line = layout.lineHeight;
  painter.setPen(drawing.palette.dim);
  drawBeside(painter, drawing, {plot.center().x(), plot.bottom() + afterTick + 1.5 * line + 4},
             axisTitle(drawing.chart.x));
  double labels = 0;
  for (const auto& label : layout.yTicks.labels) {
    labels = std::max<double>(labels, painter.fontMetrics().horizontalAdvance(label));
  }
  drawUpright(painter, drawing, plot.left() - afterTick - labels - 5 - line / 2,
              axisTitle(drawing.chart.y));
  if (drawing.chart.top && !layout.topTicks.at.empty()) {
    drawBeside(painter, drawing, {plot.center().x(), plot.top() - afterTick - 1.5 * line - 3},
               axisTitle(drawing.chart.top->axis));
  }
}

void paintColourBar(QPainter& painter, const ChartDrawing& drawing) {
  const ChartLayout& layout = drawing.layout;
  if (layout.bar.isEmpty()) {
    return;
  }
  QLinearGradient gradient(layout.bar.bottomLeft(), layout.bar.topLeft());
  for (int i = 0; i <= 32; ++i) {
    gradient.setColorAt(i / 32.0, layout.colours.colourOfPart(i / 32.0));
  }
  painter.setPen(Qt::NoPen);
  painter.setBrush(gradient);
  painter.drawRect(layout.bar);
  double widest = 0;
  for (std::size_t i = 0; i < layout.barTicks.at.size(); ++i) {
    const QString& label = layout.barTicks.labels[static_cast<qsizetype>(i)];
    const double at = layout.barScale.place(layout.barTicks.at[i]);
    painter.setPen(drawing.palette.dim);
    drawSharpLine(painter, {layout.bar.right(), at}, {layout.bar.right() + 3, at});
    painter.setPen(drawing.palette.text);
    const double width = painter.fontMetrics().horizontalAdvance(label);
    widest = std::max(widest, width);
    painter.drawText(
        QRectF(layout.bar.right() + afterTick + 1, at - layout.lineHeight / 2, width, layout.lineHeight),
        Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, label);
  }
  painter.setPen(drawing.palette.dim);
  drawUpright(painter, drawing, layout.bar.right() + afterTick + widest + 5 + layout.lineHeight / 2,
              axisTitle(drawing.chart.surface->axis));
}

void paintEmpty(QPainter& painter, const ChartDrawing& drawing) {
  painter.setPen(drawing.palette.dim);
  painter.setFont(drawing.sentenceFont);
  const QSizeF size = drawing.layout.size;
  painter.drawText(QRectF(QPointF(), size).adjusted(size.width() * 0.12, 0, -size.width() * 0.12, 0),
                   Qt::AlignCenter | Qt::TextWordWrap, QString::fromStdString(drawing.chart.whenEmpty));
}

}  // namespace

void paintUnderLines(QPainter& painter, const ChartDrawing& drawing) {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(drawing.font);
  painter.fillRect(QRectF(QPointF(), drawing.layout.size), drawing.palette.panel);
  if (drawing.isEmpty) {
    return;
  }
  paintGrid(painter, drawing);
  paintFreeGrounds(painter, drawing);
  paintBands(painter, drawing);
  if (!drawing.surface.area.isEmpty()) {
    painter.drawImage(drawing.surface.area, drawing.surface.image);
  }
  paintContours(painter, drawing);
}

void paintOverLines(QPainter& painter, const ChartDrawing& drawing) {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(drawing.font);
  if (drawing.isEmpty) {
    paintEmpty(painter, drawing);
    return;
  }
  paintLimits(painter, drawing);
  paintMarks(painter, drawing);
  for (const auto& label : drawing.labels) {
    paintLabel(painter, drawing, label);
  }
  paintTickLabels(painter, drawing);
  paintTitles(painter, drawing);
  paintColourBar(painter, drawing);
}

}  // namespace fettle::ui
