#pragma once
#include <QPolygonF>
#include <QRectF>
#include <optional>
#include <vector>

namespace fettle::ui {

/// Where a label may stand.
struct LabelPlace {
  QRectF area;
  QPointF anchor = {};  ///< what it names
  double doubt = 0;     ///< how likely it is taken for the name of something else, 0 to 1
};

/// What is already drawn on a plot, on a coarse grid, to find free places for words.
class Occupancy {
 public:
  explicit Occupancy(const QRectF& plot);

  void addLine(const QPolygonF& line);
  void addMark(QPointF middle, double size);
  void addLabel(const QRectF& label);

  /// How much lies under a label: 0 is free, 1 every cell; more for other labels; none when it does not lie
  /// wholly on the plot.
  std::optional<double> covered(const QRectF& label) const;

  /// The first of the best places: the least covered and least doubtful; none when no place lies on the
  /// plot.
  std::optional<LabelPlace> best(const std::vector<LabelPlace>& places) const;

 private:
  void occupy(const QRectF& area, int weight);
  QRect cellsUnder(const QRectF& area) const;
  std::size_t index(int column, int row) const;

  QRectF m_plot;
  int m_columns, m_rows;
  std::vector<int> m_cells;
};

/// Places of a label of the given size beside points, those of the first point first.
std::vector<LabelPlace> placesBeside(const std::vector<QPointF>& anchors, QSizeF size);

/// Points spread along a line by length, from its end to its beginning.
std::vector<QPointF> anchorsAlong(const QPolygonF& line);

}  // namespace fettle::ui
