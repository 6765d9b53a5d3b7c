#pragma once
#include <QFont>
#include <QSizeF>

#include "ui/charts/chart_drawing.h"

class QPaintDevice;

namespace fettle::ui {

/// What the device asks of a drawing.
struct DrawingSettings {
  QSizeF size;                           ///< of the chart
  QFont font;                            ///< of its labels
  QFont sentenceFont;                    ///< of what an empty chart says
  const QPaintDevice* device = nullptr;  ///< that measures the font
  double pixelsPerUnit = 1;              ///< of surfaces
};

ChartDrawing drawingOf(const Chart& chart, const View& view, const Palette& palette,
                       const DrawingSettings& settings);

/// The points of a series on an axis pair, thinned to the columns of the plot; points that the axes cannot
/// show are left out.
DrawnSeries drawnSeries(const Series& series, const ChartLayout& layout, const Palette& palette);

}  // namespace fettle::ui
