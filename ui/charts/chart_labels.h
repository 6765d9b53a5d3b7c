#pragma once
#include <QFontMetricsF>

#include "ui/charts/chart_drawing.h"

namespace fettle::ui {

inline constexpr double sampleWidth = 16;  ///< of the piece of a series before its name
inline constexpr double labelMargin = 3;   ///< left and right of a word

/// Names on the plot instead of a legend box: of limits and intervals at their ends, of series beside their
/// curves, each where least lies under it. A chart of one series names it on its axes already.
void placeLabels(ChartDrawing& drawing, const Chart& chart, const QFontMetricsF& metrics);

}  // namespace fettle::ui
