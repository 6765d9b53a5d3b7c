#include "ui/charts/label_placement.h"

#include <QLineF>
#include <algorithm>
#include <cmath>

namespace fettle::ui {
namespace {

constexpr double cellSize = 4;
constexpr int weightOfLine = 1, weightOfLabel = 8;
constexpr int anchorsOnLine = 24;
constexpr double hiding = 3;  ///< what is hidden weighs more than a name that is led to its line

}  // namespace

Occupancy::Occupancy(const QRectF& plot)
    : m_plot(plot),
      m_columns(std::max(1, static_cast<int>(std::ceil(plot.width() / cellSize)))),
      m_rows(std::max(1, static_cast<int>(std::ceil(plot.height() / cellSize)))),
      m_cells(static_cast<std::size_t>(m_columns) * static_cast<std::size_t>(m_rows)) {}

QRect Occupancy::cellsUnder(const QRectF& area) const {
  const auto column = [this](double x) {
    return static_cast<int>(std::clamp(std::floor((x - m_plot.left()) / cellSize), -1.0, m_columns + 0.0));
  };
  const auto row = [this](double y) {
    return static_cast<int>(std::clamp(std::floor((y - m_plot.top()) / cellSize), -1.0, m_rows + 0.0));
  };
  const QPoint first(column(area.left()), row(area.top())), last(column(area.right()), row(area.bottom()));
  return QRect(first, last) & QRect(0, 0, m_columns, m_rows);
}

std::size_t Occupancy::index(int column, int row) const {
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(m_columns) +
         static_cast<std::size_t>(column);
}

void Occupancy::occupy(const QRectF& area, int weight) {
  const QRect cells = cellsUnder(area);
  for (int row = cells.top(); row <= cells.bottom(); ++row) {
    for (int column = cells.left(); column <= cells.right(); ++column) {
      int& cell = m_cells[index(column, row)];
      cell = std::max(cell, weight);
    }
  }
}

void Occupancy::addLine(const QPolygonF& line) {
  const double longest = m_plot.width() + m_plot.height();
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QPointF step = line[i] - line[i - 1];
    const double length = std::min(std::hypot(step.x(), step.y()), 4 * longest);
    const int count = 1 + static_cast<int>(length / cellSize);
    for (int k = 0; k <= count; ++k) {
      occupy({line[i - 1] + step * k / count, QSizeF(0, 0)}, weightOfLine);
    }
  }
}

void Occupancy::addMark(QPointF middle, double size) {
  occupy({middle - QPointF(size / 2, size / 2), QSizeF(size, size)}, weightOfLine);
}

void Occupancy::addLabel(const QRectF& label) {
  occupy(label, weightOfLabel);
}

std::optional<double> Occupancy::covered(const QRectF& label) const {
  if (!m_plot.contains(label)) {
    return std::nullopt;
  }
  const QRect cells = cellsUnder(label);
  int sum = 0;
  for (int row = cells.top(); row <= cells.bottom(); ++row) {
    for (int column = cells.left(); column <= cells.right(); ++column) {
      sum += m_cells[index(column, row)];
    }
  }
  return static_cast<double>(sum) / (cells.width() * cells.height());
}

std::optional<LabelPlace> Occupancy::best(const std::vector<LabelPlace>& places) const {
  std::optional<LabelPlace> best;
  double least = 0;
  for (const auto& place : places) {
    const auto cover = covered(place.area);
    if (!cover) {
      continue;
    }
    const double cost = hiding * *cover + place.doubt;
    if (!best || cost < least) {
      best = place;
      least = cost;
    }
  }
  return best;
}

std::vector<LabelPlace> placesBeside(const std::vector<QPointF>& anchors, QSizeF size) {
  const double w = size.width(), h = size.height();
  std::vector<LabelPlace> places;
  for (const auto& anchor : anchors) {
    // Close by, or a line or two farther where points lie close together: rather there than over a tenth of
    // what the label would cover.
    for (const auto& [away, doubt] : {std::pair(7.0, 0.0), {7 + h, 0.2}, {7 + 2 * h, 0.3}}) {
      for (const QPointF offset : {QPointF(-w, -h - away), QPointF(away, -h - away), QPointF(-w, away),
                                   QPointF(away, away), QPointF(-w / 2, -h - away), QPointF(-w / 2, away),
                                   QPointF(2 * away, -h / 2), QPointF(-w - 2 * away, -h / 2)}) {
        places.push_back({QRectF(anchor + offset, size), anchor, doubt});
      }
    }
  }
  return places;
}

std::vector<QPointF> anchorsAlong(const QPolygonF& line) {
  double length = 0;
  for (qsizetype i = 1; i < line.size(); ++i) {
    length += QLineF(line[i - 1], line[i]).length();
  }
  if (!(length > 0)) {
    return {line.begin(), line.begin() + std::min<qsizetype>(line.size(), 1)};
  }
  std::vector<QPointF> anchors;
  double walked = 0;
  int next = 0;
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QLineF piece(line[i - 1], line[i]);
    const double end = walked + piece.length();
    for (; next <= anchorsOnLine && next * length / anchorsOnLine <= end + 1e-9; ++next) {
      const double part =
          piece.length() > 0 ? (next * length / anchorsOnLine - walked) / piece.length() : 0;
      anchors.push_back(piece.pointAt(part));
    }
    walked = end;
  }
  std::reverse(anchors.begin(), anchors.end());
  return anchors;
}

}  // namespace fettle::ui
