#pragma once
#include <QString>
#include <QStringList>
#include <vector>

#include "core/steps/contract/chart.h"
#include "ui/charts/axis_scale.h"

namespace fettle::ui {

/// Where an axis is marked, rising, and what stands there; unlabelled marks have an empty label.
struct Ticks {
  std::vector<double> at;
  QStringList labels;
  int decimals = 0;  ///< of the labels
};

/// At most `maximum` (at least 2) marks at multiples of 1, 2 or 5 times a power of ten. Labels are plain
/// figures with U+2212, "−0.05", or, where one of them would be long, all powers of ten: "3·10⁻⁷".
Ticks evenTicks(Range range, int maximum);

/// Marks at powers of ten; where fewer than two fall into the range, also at 2 and 5 times them, and where
/// that is not enough, evenly. Labels are thinned to `maximum`.
Ticks logarithmicTicks(Range range, int maximum);

Ticks ticksOf(const Axis& axis, Range range, int maximum);

/// "flow, mm³/s"; only the quantity where the number is plain.
QString axisTitle(const Axis& axis);

/// A value as the read-out gives it: two more decimals than the marks of its axis, with the unit.
QString valueText(double value, const Axis& axis, const Ticks& ticks);

}  // namespace fettle::ui
