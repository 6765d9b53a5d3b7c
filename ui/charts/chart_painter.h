#pragma once
#include "ui/charts/chart_drawing.h"

class QPainter;

namespace fettle::ui {

/// Ground, intervals, surface, grid and contours: what lies under the lines of a chart.
void paintUnderLines(QPainter& painter, const ChartDrawing& drawing);

/// Limits, marks, labels, axes and the scale of colours: what lies over the lines. An empty chart shows
/// what to enter instead.
void paintOverLines(QPainter& painter, const ChartDrawing& drawing);

}  // namespace fettle::ui
