#include "ui/charts/chart_scene.h"

#include <QAreaSeries>
#include <QChart>
#include <QGraphicsItem>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLineSeries>
#include <QLogValueAxis>
#include <QPainter>
#include <QValueAxis>
#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/charts/chart_painter.h"
#include "ui/charts/draw_chart.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

using PaintDrawing = void (*)(QPainter&, const ChartDrawing&);

class DrawingItem : public QGraphicsItem {
 public:
  DrawingItem(const ChartDrawing& drawing, PaintDrawing paintDrawing, double order)
      : m_drawing(drawing), m_paint(paintDrawing) {
    setZValue(order);
  }

  QRectF boundingRect() const override { return {QPointF(), m_drawing.layout.size}; }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override {
    m_paint(*painter, m_drawing);
  }
  void sizeChanges() { prepareGeometryChange(); }

 private:
  const ChartDrawing& m_drawing;
  PaintDrawing m_paint;
};

QAbstractAxis* newAxis(bool logarithmic) {
  QAbstractAxis* axis = nullptr;
  if (logarithmic) {
    axis = new QLogValueAxis;
  } else {
    axis = new QValueAxis;
  }
  axis->setVisible(false);  // grid and labels are painted: sharp, with a minus sign, never cut
  return axis;
}

bool isOfKind(const QAbstractAxis* axis, bool logarithmic) {
  return axis != nullptr && (axis->type() == QAbstractAxis::AxisTypeLogValue) == logarithmic;
}

}  // namespace

ChartScene::ChartScene()
    : m_chart(new QChart),
      m_under(new DrawingItem(m_drawing, paintUnderLines, -1)),
      m_over(new DrawingItem(m_drawing, paintOverLines, 1)) {
  m_scene.setItemIndexMethod(QGraphicsScene::NoIndex);
  m_chart->setBackgroundVisible(false);
  m_chart->legend()->hide();
  m_chart->setMargins({});
  m_chart->layout()->setContentsMargins(0, 0, 0, 0);
  m_scene.addItem(m_under);
  m_scene.addItem(m_chart);
  m_scene.addItem(m_over);
}

ChartScene::~ChartScene() = default;

void ChartScene::setDrawing(ChartDrawing drawing) {
  const bool resized = drawing.layout.size != m_drawing.layout.size;
  const bool moved = resized || drawing.layout.plot != m_drawing.layout.plot;
  if (moved || drawing.layout.view() != m_drawing.layout.view()) {
    clearLines();  // the plot would work out the old lines once more for each change of its axes
  }
  m_drawing = std::move(drawing);
  if (resized) {
    static_cast<DrawingItem*>(m_under)->sizeChanges();
    static_cast<DrawingItem*>(m_over)->sizeChanges();
    m_scene.setSceneRect(QRectF(QPointF(), m_drawing.layout.size));
    m_chart->resize(m_drawing.layout.size);
  }
  if (moved) {
    m_chart->setPlotArea(m_drawing.layout.plot);
  }
  setAxes();
  setLines();
}

void ChartScene::clearLines() {
  for (auto* const line : m_lines) {
    line->clear();
  }
  for (auto* const area : m_areas) {
    area->upperSeries()->clear();
    area->lowerSeries()->clear();
  }
}

void ChartScene::setAxes() {
  const ChartLayout& layout = m_drawing.layout;
  const auto renew = [this](QAbstractAxis*& axis, bool logarithmic, Qt::Alignment side) {
    if (isOfKind(axis, logarithmic)) {
      return;
    }
    if (axis != nullptr) {
      m_chart->removeAxis(axis);
      delete axis;
    }
    axis = newAxis(logarithmic);
    m_chart->addAxis(axis, side);
    for (auto* const series : m_chart->series()) {
      series->attachAxis(axis);
    }
  };
  renew(m_x, layout.x.isLogarithmic(), Qt::AlignBottom);
  renew(m_y, layout.y.isLogarithmic(), Qt::AlignLeft);
  m_x->setRange(layout.x.values().from, layout.x.values().to);
  m_y->setRange(layout.y.values().from, layout.y.values().to);
}

QLineSeries* ChartScene::line(std::size_t index) {
  if (index == m_lines.size()) {
    m_lines.push_back(new QLineSeries);
    m_chart->addSeries(m_lines.back());
    m_lines.back()->attachAxis(m_x);
    m_lines.back()->attachAxis(m_y);
  }
  return m_lines[index];
}

QAreaSeries* ChartScene::area(std::size_t index) {
  if (index == m_areas.size()) {
    m_areas.push_back(new QAreaSeries(new QLineSeries, new QLineSeries));
    m_areas.back()->upperSeries()->setParent(m_areas.back());
    m_areas.back()->lowerSeries()->setParent(m_areas.back());
    m_chart->addSeries(m_areas.back());
    m_areas.back()->attachAxis(m_x);
    m_areas.back()->attachAxis(m_y);
  }
  return m_areas[index];
}

void ChartScene::setLines() {
  std::size_t lines = 0, areas = 0;
  std::vector<const DrawnSeries*> ordered;
  for (const auto& series : m_drawing.series) {
    ordered.push_back(&series);
  }
  // A thin line, as of what was measured, lies over a wide one and is not hidden by it.
  std::stable_sort(ordered.begin(), ordered.end(), [](const DrawnSeries* a, const DrawnSeries* b) {
    return a->style.pen.widthF() > b->style.pen.widthF();
  });
  for (const auto* one : ordered) {
    const DrawnSeries& series = *one;
    if (series.style.isLine) {
      QLineSeries* const drawn = line(lines++);
      drawn->setPen(series.style.pen);
      drawn->replace(series.values);
    } else if (series.style.isArea) {
      QAreaSeries* const drawn = area(areas++);
      drawn->setPen(Qt::NoPen);
      drawn->setBrush(series.style.fill);
      drawn->lowerSeries()->replace(series.values);
      drawn->upperSeries()->replace(series.upper);
    }
  }
  for (; lines < m_lines.size(); ++lines) {
    m_lines[lines]->clear();
  }
  for (; areas < m_areas.size(); ++areas) {
    m_areas[areas]->lowerSeries()->clear();
    m_areas[areas]->upperSeries()->clear();
  }
}

void ChartScene::render(QPainter& painter, const QRectF& target) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  m_scene.render(&painter, target, m_scene.sceneRect(), Qt::IgnoreAspectRatio);
  painter.restore();
}

void paintChart(QPainter& painter, const QRectF& target, const Chart& chart, const Palette& palette) {
  constexpr double unitsPerInch = 96;  // of a drawing, as on screens
  const QPaintDevice* const device = painter.device();
  const double dotsPerInch = device->logicalDpiY();
  const QTransform& transform = painter.worldTransform();
  const double dotsPerUnit = std::hypot(transform.m11(), transform.m12());
  const double units = dotsPerUnit * unitsPerInch / dotsPerInch;
  DrawingSettings settings;
  settings.size = target.size() * units;
  const Fonts fonts = fontsOf(10 * unitsPerInch / dotsPerInch);
  settings.font = fonts.small;
  settings.sentenceFont = fonts.base;
  settings.device = device;
  settings.pixelsPerUnit = 2;
  ChartScene scene;
  scene.setDrawing(drawingOf(chart, wholeView(chart), palette, settings));
  scene.render(painter, target);
}

}  // namespace fettle::ui
