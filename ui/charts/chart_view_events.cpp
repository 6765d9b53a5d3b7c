// The half of ChartView that answers to events.
#include <QApplication>
#include <QKeyEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QPainter>
#include <QToolButton>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "ui/charts/chart_scene.h"
#include "ui/charts/chart_view.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

constexpr double wheelFactor = 0.8;  ///< of the range, for one notch of the wheel
constexpr double notch = 120;        ///< eighths of a degree
constexpr double smallestFrame = 8;  ///< a smaller one is a click
constexpr int pageOfPoints = 10;

}  // namespace

void ChartView::paintEvent(QPaintEvent*) {
  bringUpToDate();
  QPainter painter(this);
  painter.drawPixmap(0, 0, m_picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(hasFocus() ? m_colours.accent : m_colours.line, 1));
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
  if (m_isFraming) {
    painter.setPen(QPen(m_colours.accent, 1, Qt::DashLine));
    painter.setBrush(withOpacity(m_colours.accent, 0.1));
    painter.drawRect(m_frame);
  }
  if (m_reading) {
    paintReading(painter);
  }
}

void ChartView::paintReading(QPainter& painter) const {
  constexpr double margin = 7, away = 12;
  painter.setFont(m_scene->drawing().font);
  const QFontMetricsF metrics(painter.font(), this);
  double width = 0;
  for (const auto& line : m_reading->lines) {
    width = std::max(width, metrics.horizontalAdvance(line));
  }
  const auto lines = static_cast<double>(m_reading->lines.size());
  QRectF box(0, 0, width + 2 * margin, lines * metrics.height() + 2 * margin - 2);
  const QPointF place = m_reading->place;
  const bool fitsRight = place.x() + away + box.width() < this->width() - 4;
  box.moveLeft(fitsRight ? place.x() + away : std::max(place.x() - away - box.width(), 4.0));
  box.moveTop(std::clamp(place.y() - away - box.height(), 4.0, std::max(height() - 4 - box.height(), 4.0)));
  painter.setBrush(Qt::NoBrush);
  for (const auto& pen : {QPen(withOpacity(m_colours.panel, 0.7), 4), QPen(m_colours.text, 1.5)}) {
    painter.setPen(pen);
    painter.drawEllipse(place, 6, 6);
  }
  painter.setPen(QPen(m_colours.dim, 1));
  painter.setBrush(m_colours.panel);
  painter.drawRoundedRect(box.translated(0.5, 0.5), 3, 3);
  painter.setPen(m_colours.text);
  QRectF row(box.left() + margin, box.top() + margin - 1, width + 2, metrics.height());
  for (const auto& line : m_reading->lines) {
    painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, line);
    row.translate(0, metrics.height());
  }
}

void ChartView::resizeEvent(QResizeEvent* event) {
  constexpr int side = 22, inset = 3;
  m_button->setGeometry(width() - side - inset, inset, side, side - 2);
  m_isStale = true;
  m_reading.reset();
  QWidget::resizeEvent(event);
}

void ChartView::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !m_chart.isEmpty()) {
    m_pressed = event->position();
  }
}

void ChartView::mouseMoveEvent(QMouseEvent* event) {
  if ((event->buttons() & Qt::LeftButton) != 0 && !m_chart.isEmpty()) {
    m_frame = QRectF(m_pressed, event->position()).normalized() & layoutOfChart().plot;
    m_isFraming = std::max(m_frame.width(), m_frame.height()) >= smallestFrame;
    m_reading.reset();
    update();
    return;
  }
  setReading(readingAt(m_chart, layoutOfChart(), event->position()));
}

void ChartView::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !m_isFraming) {
    return;
  }
  m_isFraming = false;
  if (std::min(m_frame.width(), m_frame.height()) >= smallestFrame) {
    zoomTo(m_frame);
  }
  update();
}

void ChartView::mouseDoubleClickEvent(QMouseEvent*) {
  setZoom(std::nullopt);
}

void ChartView::wheelEvent(QWheelEvent* event) {
  if (m_chart.isEmpty() || !layoutOfChart().plot.contains(event->position())) {
    event->ignore();
    return;
  }
  zoomAbout(event->position(), std::pow(wheelFactor, event->angleDelta().y() / notch));
  event->accept();
}

void ChartView::leaveEvent(QEvent*) {
  setReading(std::nullopt);
}

void ChartView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Left:
      return walk(-1, 0);
    case Qt::Key_Right:
      return walk(1, 0);
    case Qt::Key_PageUp:
      return walk(-pageOfPoints, 0);
    case Qt::Key_PageDown:
      return walk(pageOfPoints, 0);
    case Qt::Key_Up:
      return walk(0, 1);
    case Qt::Key_Down:
      return walk(0, -1);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoomAbout(m_reading ? m_reading->place : layoutOfChart().plot.center(), wheelFactor);
    case Qt::Key_Minus:
      return zoomAbout(layoutOfChart().plot.center(), 1 / wheelFactor);
    case Qt::Key_Escape:
    case Qt::Key_0:
      if (m_zoom || m_reading) {
        return setZoom(std::nullopt);
      }
      break;
    case Qt::Key_Menu:
      return m_button->showMenu();
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

void ChartView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange || event->type() == QEvent::ApplicationFontChange) {
    m_isStale = true;
    update();
  }
  QWidget::changeEvent(event);
}

}  // namespace fettle::ui
