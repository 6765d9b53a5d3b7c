#pragma once
#include <QGraphicsScene>
#include <memory>
#include <vector>

#include "ui/charts/chart_drawing.h"

class QAbstractAxis;
class QAreaSeries;
class QChart;
class QLineSeries;

namespace fettle::ui {

/// A drawing on a Qt Charts plot: the one way on which charts reach the screen, SVG and PDF. Lines and
/// areas are series of the plot and are kept from one drawing to the next; the rest is painted below and
/// above it.
class ChartScene {
 public:
  ChartScene();
  ~ChartScene();
  ChartScene(const ChartScene&) = delete;
  ChartScene& operator=(const ChartScene&) = delete;

  void setDrawing(ChartDrawing drawing);
  const ChartDrawing& drawing() const { return m_drawing; }

  /// Paints the whole drawing into a rectangle of the painter.
  void render(QPainter& painter, const QRectF& target);

 private:
  void setAxes();
  void setLines();
  QLineSeries* line(std::size_t index);
  QAreaSeries* area(std::size_t index);
  void clearLines();

  QGraphicsScene m_scene;
  QChart* m_chart;
  QAbstractAxis* m_x = nullptr;
  QAbstractAxis* m_y = nullptr;
  std::vector<QLineSeries*> m_lines;
  std::vector<QAreaSeries*> m_areas;
  QGraphicsItem *m_under, *m_over;
  ChartDrawing m_drawing;
};

/// Draws a chart as vectors (its surface as a picture) into a rectangle of a painter, all of its range, the
/// type in points of the painter's device. Needs a QApplication. For the report with Palette::print().
void paintChart(QPainter& painter, const QRectF& target, const Chart& chart, const Palette& palette);

}  // namespace fettle::ui
