#pragma once
#include <QStringList>
#include <optional>

#include "ui/charts/chart_layout.h"

namespace fettle::ui {

/// The value at one place of a chart, in words.
struct Reading {
  QPointF place;                      ///< of the value on the picture
  QStringList lines;                  ///< "measured", "flow 12.00 mm³/s", "delivered 0.9540"
  std::size_t series = 0, point = 0;  ///< of a point, for walking on from it
};

/// What the chart says under a place: of a map the height or density there, which is that of a point of its
/// net when one is close; else the nearest point of any series, or the nearest place on a model's line, not
/// farther than `reach`.
std::optional<Reading> readingAt(const Chart& chart, const ChartLayout& layout, QPointF place,
                                 double reach = 28);

/// The reading of one point of a series, or of a surface when `chart` has one: points are counted row by
/// row then, and `series` says nothing. None outside of the data.
std::optional<Reading> readingOf(const Chart& chart, const ChartLayout& layout, std::size_t series,
                                 std::size_t point);

/// What there is to walk over with the keyboard: points of a series, or of the net of a surface.
std::size_t pointCount(const Chart& chart, std::size_t series);

/// The chart in one sentence, for those who do not see it; `view` is what is shown of it.
QString chartSummary(const Chart& chart, const View& view);

}  // namespace fettle::ui
