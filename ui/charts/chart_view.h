#pragma once
#include <QPixmap>
#include <QWidget>
#include <memory>
#include <optional>

#include "ui/charts/chart_export.h"
#include "ui/charts/chart_reading.h"
#include "ui/theme/palette.h"

class QToolButton;

namespace fettle::ui {

class ChartScene;

/// A chart on the screen. The pointer or the arrow keys read values, the wheel or a drawn frame zooms,
/// double click or Escape shows all again; the button in the corner saves and copies. Nothing is worked out
/// before it is painted, so that many changes at once cost one.
class ChartView : public QWidget {
  Q_OBJECT

 public:
  explicit ChartView(QWidget* parent = nullptr);
  ~ChartView() override;

  /// Keeps the zoom while the chart stays the same one (id and title).
  void setChart(const Chart& chart);
  const Chart& chart() const { return m_chart; }

  using QWidget::setPalette;
  void setPalette(const Palette& palette);

  /// The part shown, none for all.
  const std::optional<View>& zoom() const { return m_zoom; }
  void setZoom(const std::optional<View>& view);

  /// The value under the pointer or the keyboard's mark.
  const std::optional<Reading>& reading() const { return m_reading; }

  /// Where things stand at the present size; worked out when needed.
  const ChartLayout& layoutOfChart();

  /// Writes the chart to a file.
  /// @return one sentence when it could not be written
  std::optional<QString> saveAs(ChartFormat format, const QString& path) const;

  QSize sizeHint() const override { return {560, 420}; }
  QSize minimumSizeHint() const override { return {280, 220}; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void makeMenu();
  void askAndSave(ChartFormat format);
  void copyPicture() const;
  void chartChanges();
  void bringUpToDate();
  void setReading(std::optional<Reading> reading);
  void zoomAbout(QPointF place, double factor);
  void zoomTo(const QRectF& frame);
  void walk(int points, int series);
  void paintReading(QPainter& painter) const;

  Chart m_chart;
  Palette m_colours = Palette::light();
  std::unique_ptr<ChartScene> m_scene;
  QPixmap m_picture;
  bool m_isStale = true;
  std::optional<View> m_zoom;
  std::optional<Reading> m_reading;
  QRectF m_frame;  ///< drawn with the pointer
  QPointF m_pressed;
  bool m_isFraming = false;
  QToolButton* m_button;
};

}  // namespace fettle::ui
