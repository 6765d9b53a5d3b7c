#include "core/steps/bed_shape/heights.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double samePlace = 0.1;  // mm

std::vector<std::size_t> orderOfX(const std::vector<HeightPoint>& points) {
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return *points[a].x < *points[b].x; });
  return order;
}

Refusal contradictionOf(const HeightPoint& first, const HeightPoint& second) {
  const std::size_t later = std::max(first.number, second.number);
  return {say(Text::tr("Points, rows {0} and {1}: the same place {2}, {3} has the heights {4} and {5} "
                       "mm; exclude one of them or give it another place."),
              std::min(first.number, second.number), later, formatNumber(*first.x), formatNumber(*first.y),
              formatNumber(*first.z), formatNumber(*second.z)),
          fmt::format("points[{}]", later)};
}

void refuseFarLines(const std::vector<double>& lines, const char* axis) {
  for (const double line : lines) {
    if (std::abs(line) > farthestPlace) {
      throw Refusal{
          say(Text::tr("Grid of heights: a line at {0} = {1} mm is not possible; {2} to {3} mm is "
                       "accepted."),
              axis, formatNumber(line), formatNumber(-farthestPlace), formatNumber(farthestPlace)),
          "grid"};
    }
  }
}

enum class Standing { counts, repeats, contradicts };

/// Which points count; contradictions are added to the heights.
std::vector<Standing> standings(const std::vector<HeightPoint>& points, BedHeights& heights) {
  const auto order = orderOfX(points);
  std::vector<Standing> standing(points.size(), Standing::counts);
  for (std::size_t i = 0; i < order.size(); ++i) {
    const HeightPoint& first = points[order[i]];
    for (std::size_t k = i + 1; k < order.size() && *points[order[k]].x - *first.x <= samePlace; ++k) {
      const HeightPoint& second = points[order[k]];
      if (std::abs(*second.y - *first.y) > samePlace) {
        continue;
      }
      if (*second.z == *first.z) {
        standing[order[k]] = std::max(standing[order[k]], Standing::repeats);
        continue;
      }
      if (standing[order[k]] != Standing::contradicts) {
        heights.contradictions.push_back(contradictionOf(first, second));
      }
      standing[order[i]] = standing[order[k]] = Standing::contradicts;
    }
  }
  return standing;
}

/// The lines on which coordinates lie, rising; none when some lie more than 0.1 mm beside them.
std::optional<std::vector<double>> linesThrough(std::vector<double> coordinates) {
  std::sort(coordinates.begin(), coordinates.end());
  std::vector<double> lines;
  for (std::size_t begin = 0; begin < coordinates.size();) {
    std::size_t end = begin + 1;
    while (end < coordinates.size() && coordinates[end] - coordinates[end - 1] <= samePlace) {
      ++end;
    }
    const auto from = coordinates.begin() + static_cast<std::ptrdiff_t>(begin);
    const auto to = coordinates.begin() + static_cast<std::ptrdiff_t>(end);
    const double line = std::accumulate(from, to, 0.0) / static_cast<double>(end - begin);
    if (coordinates[end - 1] - line > samePlace || line - coordinates[begin] > samePlace) {
      return std::nullopt;
    }
    lines.push_back(line);
    begin = end;
  }
  return lines;
}

Eigen::Index nearestLine(const std::vector<double>& lines, double coordinate) {
  const auto above = std::lower_bound(lines.begin(), lines.end(), coordinate);
  const auto index = above - lines.begin();
  if (above == lines.begin()) {
    return 0;
  }
  return above == lines.end() ||
                 coordinate - lines[static_cast<std::size_t>(index - 1)] < *above - coordinate
             ? index - 1
             : index;
}

std::optional<GridReadings> netOf(const BedHeights& heights) {
  const auto x = linesThrough(heights.x);
  const auto y = linesThrough(heights.y);
  if (!x || !y || x->size() < 2 || y->size() < 2 || x->size() * y->size() != heights.count()) {
    return std::nullopt;
  }
  GridReadings grid;
  grid.x = *x;
  grid.y = *y;
  grid.z.setConstant(static_cast<Eigen::Index>(y->size()), static_cast<Eigen::Index>(x->size()),
                     std::nan(""));
  for (std::size_t i = 0; i < heights.count(); ++i) {
    grid.z(nearestLine(*y, heights.y[i]), nearestLine(*x, heights.x[i])) = heights.z[i];
  }
  return grid.z.allFinite() ? std::optional(grid) : std::nullopt;
}

}  // namespace

BedHeights heightsOfGrid(const GridReadings& grid) {
  refuseFarLines(grid.x, "x");
  refuseFarLines(grid.y, "y");
  BedHeights heights;
  heights.field = "grid";
  for (std::size_t row = 0; row < grid.y.size(); ++row) {
    for (std::size_t column = 0; column < grid.x.size(); ++column) {
      const double z = grid.z(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column));
      if (std::isnan(z)) {
        ++heights.blankCells;
        continue;
      }
      heights.x.push_back(grid.x[column]);
      heights.y.push_back(grid.y[row]);
      heights.z.push_back(z);
    }
  }
  if (heights.blankCells == 0) {
    heights.grid = grid;
  } else {
    heights.withBlanks = grid;
    heights.grid = netOf(heights);
  }
  return heights;
}

BedHeights heightsOfPoints(const std::vector<HeightPoint>& points) {
  BedHeights heights;
  heights.field = "points";
  const auto standing = standings(points, heights);
  for (std::size_t i = 0; i < points.size(); ++i) {
    heights.repeated += standing[i] == Standing::repeats ? 1 : 0;
    if (standing[i] == Standing::counts) {
      heights.x.push_back(*points[i].x);
      heights.y.push_back(*points[i].y);
      heights.z.push_back(*points[i].z);
    }
  }
  heights.grid = netOf(heights);
  return heights;
}

}  // namespace fettle
