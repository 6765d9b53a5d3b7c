#include "ui/charts/label_placement.h"

#include <QLineF>
#include <algorithm>
#include <cmath>

namespace fettle::ui {
namespace {

constexpr double cellSize = 4;
constexpr int weightOfLine = 1, weightOfLabel = 8;
constexpr int anchorsOnLine = 24;

}  // namespace

Occupancy::Occupancy(const QRectF& plot)
    : m_plot(plot),
      m_columns(std::max(1, static_cast<int>(std::ceil(plot.width() / cellSize)))),
      m_rows(std::max(1, static_cast<int>(std::ceil(plot.height() / cellSize)))),
      m_cells(static_cast<std::size_t>(m_columns) * static_cast<std::size_t>(m_rows)) {}

std::size_t Occupancy::index(int row, int column) const {
  return static_cast<std::size_t>(row) * static_cast<std::size_t>(m_columns) +
         static_cast<std::size_t>(column);
}

int* Occupancy::cell(QPointF at) {
  const int column = static_cast<int>(std::floor((at.x() - m_plot.left()) / cellSize));
  const int row = static_cast<int>(std::floor((at.y() - m_plot.top()) / cellSize));
  if (column < 0 || column >= m_columns || row < 0 || row >= m_rows) {
    return nullptr;
  }
  return &m_cells[index(row, column)];
}

void Occupancy::addLine(const QPolygonF& line) {
  const double longest = m_plot.width() + m_plot.height();
  for (qsizetype i = 1; i < line.size(); ++i) {
    const QPointF step = line[i] - line[i - 1];
    const double length = std::min(std::hypot(step.x(), step.y()), 4 * longest);
    const int count = 1 + static_cast<int>(length / cellSize);
    for (int k = 0; k <= count; ++k) {
      occupy(line[i - 1] + step * k / count);
    }
  }
}

void Occupancy::addMark(QPointF middle, double size) {
  for (double y = -size / 2; y <= size / 2; y += size / 2) {
    for (double x = -size / 2; x <= size / 2; x += size / 2) {
      occupy(middle + QPointF(x, y));
    }
  }
}

void Occupancy::occupy(QPointF at) {
  if (int* const here = cell(at)) {
    *here = std::max(*here, weightOfLine);
  }
}

void Occupancy::addLabel(const QRectF& label) {
  for (double y = label.top(); y < label.bottom() + cellSize; y += cellSize) {
    for (double x = label.left(); x < label.right() + cellSize; x += cellSize) {
      if (int* const here = cell({std::min(x, label.right()), std::min(y, label.bottom())})) {
        *here = weightOfLabel;
      }
    }
  }
}

std::optional<double> Occupancy::covered(const QRectF& label) const {
  if (!m_plot.contains(label)) {
    return std::nullopt;
  }
  const auto cells = [](double distance) { return static_cast<int>(std::floor(distance / cellSize)); };
  const int left = cells(label.left() - m_plot.left());
  const int right = std::min(cells(label.right() - m_plot.left()), m_columns - 1);
  const int top = cells(label.top() - m_plot.top());
  const int bottom = std::min(cells(label.bottom() - m_plot.top()), m_rows - 1);
  int sum = 0;
  for (int row = top; row <= bottom; ++row) {
    for (int column = left; column <= right; ++column) {
      sum += m_cells[index(row, column)];
    }
  }
  return static_cast<double>(sum) / ((bottom - top + 1) * (right - left + 1));
}

std::optional<LabelPlace> Occupancy::best(const std::vector<LabelPlace>& places) const {
  std::optional<LabelPlace> best;
  double least = 0;
  for (const auto& place : places) {
    const auto cover = covered(place.area);
    if (!cover) {
      continue;
    }
    const double cost = *cover + place.doubt;
    if (!best || cost < least) {
      best = place;
      least = cost;
    }
  }
  return best;
}

std::vector<LabelPlace> placesBeside(const std::vector<QPointF>& anchors, QSizeF size) {
  constexpr double away = 7;
  const double w = size.width(), h = size.height();
  const QPointF offsets[] = {{-w, -h - away},    {away, -h - away},      {-w, away},
                             {away, away},       {-w / 2, -h - away},    {-w / 2, away},
                             {2 * away, -h / 2}, {-w - 2 * away, -h / 2}};
  std::vector<LabelPlace> places;
  for (const auto& anchor : anchors) {
    for (const auto& offset : offsets) {
      places.push_back({QRectF(anchor + offset, size), anchor});
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
