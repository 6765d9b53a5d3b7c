#pragma once
#include "core/steps/contract/chart.h"

namespace fettle::ui {

struct Range {
  double from = 0, to = 1;

  double size() const { return to - from; }
  bool contains(double value) const { return value >= from && value <= to; }
  bool operator==(const Range&) const = default;
};

/// The part of a chart that is shown, in its own units.
struct View {
  Range x, y;

  bool operator==(const View&) const = default;
};

/// From values along one axis to places on the picture and back.
class AxisScale {
 public:
  AxisScale() = default;
  AxisScale(Range values, Range places, bool logarithmic);

  double place(double value) const;
  double value(double place) const;
  const Range& values() const { return m_values; }
  const Range& places() const { return m_places; }
  bool isLogarithmic() const { return m_logarithmic; }

 private:
  double linear(double value) const;

  Range m_values, m_places;
  double m_from = 0, m_to = 1;  ///< of the values, or of their logarithms
  bool m_logarithmic = false;
};

/// Where the part of a range that is in view lies on the picture, from left to right or from top to bottom.
Range placesInView(const AxisScale& scale, Range range);

/// True where both axes of a chart are drawn to one scale: plans and maps in coordinates of one unit.
bool hasEqualScales(const Chart& chart);

/// All of a chart: every point, limit and surface, with a little room around them; densities and other
/// quantities close to zero start at zero. Values that a logarithmic axis cannot show are left out.
View wholeView(const Chart& chart);

/// Edges of the cells whose middles are given, half way between them; for time-frequency pictures.
std::vector<double> cellEdges(const std::vector<double>& middles);

}  // namespace fettle::ui
