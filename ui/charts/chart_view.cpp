#include "ui/charts/chart_view.h"

#include <QAccessible>
#include <QApplication>
#include <QClipboard>
#include <QFileDialog>
#include <QMenu>
#include <QMessageBox>
#include <QMouseEvent>
#include <QPainter>
#include <QToolButton>
#include <cmath>

#include "ui/charts/chart_scene.h"
#include "ui/charts/draw_chart.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

constexpr double deepestZoom = 1e-6;  ///< of the whole range

Range zoomed(const AxisScale& scale, double place, double factor) {
  const Range& places = scale.places();
  const Range values{scale.value(place + (places.from - place) * factor),
                     scale.value(place + (places.to - place) * factor)};
  return values;
}

bool isTooDeep(const View& view, const View& whole) {
  return view.x.size() < deepestZoom * whole.x.size() || view.y.size() < deepestZoom * whole.y.size();
}

/// A frame widened to the shape of the plot, for charts with equal scales.
QRectF withShapeOf(const QRectF& plot, QRectF frame) {
  const double scale = std::max(frame.width() / plot.width(), frame.height() / plot.height());
  const QPointF middle = frame.center();
  frame.setSize(plot.size() * scale);
  frame.moveCenter(middle);
  return frame;
}

}  // namespace

ChartView::ChartView(QWidget* parent)
    : QWidget(parent), m_scene(new ChartScene), m_button(new QToolButton(this)) {
  setObjectName(QStringLiteral("chartView"));
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  makeMenu();
  chartChanges();
}

ChartView::~ChartView() = default;

void ChartView::makeMenu() {
  m_button->setObjectName(QStringLiteral("chartMenuButton"));
  m_button->setText(QStringLiteral("⋯"));
  m_button->setAutoRaise(true);
  m_button->setPopupMode(QToolButton::InstantPopup);
  m_button->setToolTip(tr("Save or copy this chart"));
  m_button->setAccessibleName(tr("Save or copy this chart"));
  m_button->setStyleSheet(QStringLiteral("QToolButton::menu-indicator { image: none; }"));
  auto* const menu = new QMenu(m_button);
  menu->addAction(tr("Save the values (CSV)…"), this, [this] { askAndSave(ChartFormat::csv); });
  menu->addAction(tr("Save a drawing (SVG)…"), this, [this] { askAndSave(ChartFormat::svg); });
  menu->addAction(tr("Save a picture (PNG)…"), this, [this] { askAndSave(ChartFormat::png); });
  menu->addAction(tr("Copy the picture"), this, &ChartView::copyPicture);
  menu->addSeparator();
  menu->addAction(tr("Show the whole chart"), this, [this] { setZoom(std::nullopt); });
  m_button->setMenu(menu);
}

void ChartView::setChart(const Chart& chart) {
  if (chart == m_chart) {
    return;
  }
  if (chart.view != m_chart.view || chart.about != m_chart.about || chart.title != m_chart.title) {
    m_zoom.reset();
  }
  m_chart = chart;
  chartChanges();
}

void ChartView::setPalette(const Palette& palette) {
  m_colours = palette;
  chartChanges();
}

void ChartView::setZoom(const std::optional<View>& view) {
  m_zoom = view;
  chartChanges();
}

void ChartView::chartChanges() {
  m_isStale = true;
  m_reading.reset();
  m_button->setEnabled(!m_chart.isEmpty());
  setAccessibleName(m_chart.title.empty() ? tr("Chart") : QString::fromStdString(m_chart.title));
  setAccessibleDescription(QString());  // worked out when asked for, see bringUpToDate
  update();
}

void ChartView::bringUpToDate() {
  if (!m_isStale) {
    return;
  }
  m_isStale = false;
  DrawingSettings settings;
  settings.size = size();
  const Fonts fonts = fontsOf(QApplication::font().pointSizeF());
  settings.font = fonts.small;
  settings.sentenceFont = fonts.base;
  settings.device = this;
  settings.pixelsPerUnit = devicePixelRatioF();
  m_scene->setDrawing(drawingOf(m_chart, m_zoom.value_or(wholeView(m_chart)), m_colours, settings));
  m_picture = QPixmap(size() * devicePixelRatioF());
  m_picture.setDevicePixelRatio(devicePixelRatioF());
  QPainter painter(&m_picture);
  m_scene->render(painter, rect());
  painter.end();
  setAccessibleDescription(chartSummary(m_chart, m_scene->drawing().layout.view()));
}

const ChartLayout& ChartView::layoutOfChart() {
  bringUpToDate();
  return m_scene->drawing().layout;
}

std::optional<QString> ChartView::saveAs(ChartFormat format, const QString& path) const {
  return writeFile(path, chartAs(format, m_chart, size()));
}

void ChartView::askAndSave(ChartFormat format) {
  const char* const filters[] = {QT_TR_NOOP("Values (*.csv)"), QT_TR_NOOP("Drawing (*.svg)"),
                                 QT_TR_NOOP("Picture (*.png)")};
  const QString path = QFileDialog::getSaveFileName(this, tr("Save the chart"), fileNameOf(m_chart, format),
                                                    tr(filters[static_cast<std::size_t>(format)]));
  if (path.isEmpty()) {
    return;
  }
  if (const auto problem = saveAs(format, path)) {
    QMessageBox::warning(this, tr("Save the chart"), *problem);
  }
}

void ChartView::copyPicture() const {
  QGuiApplication::clipboard()->setImage(QImage::fromData(chartAs(ChartFormat::png, m_chart, size())));
}

void ChartView::setReading(std::optional<Reading> reading) {
  m_reading = std::move(reading);
  if (m_reading && hasFocus()) {
    setAccessibleDescription(m_reading->lines.join(QStringLiteral(", ")));
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
  }
  update();
}

void ChartView::zoomAbout(QPointF place, double factor) {
  const ChartLayout& layout = layoutOfChart();
  const View whole = wholeView(m_chart);
  View view{zoomed(layout.x, place.x(), factor), zoomed(layout.y, place.y(), factor)};
  if (isTooDeep(view, whole)) {
    return;
  }
  const bool showsAll = view.x.size() >= whole.x.size() && view.y.size() >= whole.y.size();
  setZoom(showsAll ? std::nullopt : std::optional(view));
}

void ChartView::zoomTo(const QRectF& frame) {
  const ChartLayout& layout = layoutOfChart();
  const QRectF chosen = hasEqualScales(m_chart) ? withShapeOf(layout.plot, frame) : frame & layout.plot;
  const View view{{layout.x.value(chosen.left()), layout.x.value(chosen.right())},
                  {layout.y.value(chosen.bottom()), layout.y.value(chosen.top())}};
  if (!isTooDeep(view, wholeView(m_chart))) {
    setZoom(view);
  }
}

void ChartView::walk(int points, int series) {
  const auto seriesCount = static_cast<int>(m_chart.surface ? 1 : m_chart.series.size());
  if (seriesCount == 0 || m_chart.isEmpty()) {
    return;
  }
  const int columns = m_chart.surface ? static_cast<int>(m_chart.surface->x.size()) : 0;
  const int from = m_reading ? static_cast<int>(m_reading->series) : 0;
  const int to = m_chart.surface ? 0 : std::clamp(from + series, 0, seriesCount - 1);
  const auto last = static_cast<int>(pointCount(m_chart, static_cast<std::size_t>(to))) - 1;
  if (last < 0) {
    return;
  }
  const int here = m_reading ? static_cast<int>(m_reading->point) + points + series * columns : 0;
  setReading(readingOf(m_chart, layoutOfChart(), static_cast<std::size_t>(to),
                       static_cast<std::size_t>(std::clamp(here, 0, last))));
}

}  // namespace fettle::ui
