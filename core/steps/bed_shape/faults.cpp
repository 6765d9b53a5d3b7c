#include "core/steps/bed_shape/faults.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/outliers.h"
#include "core/maths/plane.h"

namespace fettle {
namespace {

// Limits: common practice, no source.
constexpr double dropLimit = 0.5, curlLimit = 0.3, oppositeFactor = 3, agreement = 0.75;
constexpr double spikeLimit = 0.1, spikeScore = 3.5, smallestScatter = 0.005, stepLimit = 0.5;
constexpr std::size_t fewestLines = 4, fewestLinesForSecond = 5;

bool alongX(BedSide side) {
  return side == BedSide::left || side == BedSide::right;
}

const std::vector<double>& linePlaces(const GridReadings& grid, BedSide side) {
  return alongX(side) ? grid.x : grid.y;
}

/// Index of the n-th line from a side, from 0.
std::size_t lineFrom(const GridReadings& grid, BedSide side, std::size_t n) {
  const std::size_t last = linePlaces(grid, side).size() - 1;
  return side == BedSide::left || side == BedSide::front ? n : last - n;
}

std::vector<double> heightsOfLine(const GridReadings& grid, BedSide side, std::size_t n) {
  const auto line = static_cast<Eigen::Index>(lineFrom(grid, side, n));
  const Eigen::VectorXd heights =
      alongX(side) ? Eigen::VectorXd(grid.z.col(line)) : Eigen::VectorXd(grid.z.row(line).transpose());
  return {heights.begin(), heights.end()};
}

EdgeLine measuredEdge(const GridReadings& grid, BedSide side, int line) {
  const auto k = static_cast<std::size_t>(line - 1);
  const auto& places = linePlaces(grid, side);
  const auto place = [&](std::size_t n) { return places[lineFrom(grid, side, n)]; };
  const double reach = (place(k) - place(k + 1)) / (place(k + 1) - place(k + 2));
  const auto outer = heightsOfLine(grid, side, k);
  const auto next = heightsOfLine(grid, side, k + 1);
  const auto inner = heightsOfLine(grid, side, k + 2);
  std::vector<double> steps;
  for (std::size_t j = 0; j < outer.size(); ++j) {
    steps.push_back(outer[j] - (next[j] + (next[j] - inner[j]) * reach));
  }
  EdgeLine edge;
  edge.side = side;
  edge.line = line;
  edge.step = maths::median(steps);
  const auto sharing =
      std::count_if(steps.begin(), steps.end(), [&](double step) { return step * edge.step > 0; });
  edge.agree = static_cast<double>(sharing) / static_cast<double>(steps.size());
  return edge;
}

void judgePair(EdgeLine& edge, const EdgeLine& opposite) {
  const double size = std::abs(edge.step);
  const bool shared = edge.agree >= agreement;
  edge.drop = shared && size > std::max(dropLimit, oppositeFactor * std::abs(opposite.step));
  edge.curl = shared && !edge.drop && size > curlLimit;
}

void addPair(std::vector<EdgeLine>& edges, const GridReadings& grid, BedSide side, BedSide opposite,
             int line) {
  EdgeLine here = measuredEdge(grid, side, line);
  EdgeLine there = measuredEdge(grid, opposite, line);
  judgePair(here, there);
  judgePair(there, here);
  edges.push_back(here);
  edges.push_back(there);
}

/// When the second line from the side has dropped, so has the first one beside it, and the first one's own
/// figure is only the second's mirror image; so the deeper line counts.
bool saysMore(const EdgeLine& edge, const EdgeLine& than) {
  if (edge.drop != than.drop) {
    return edge.drop;
  }
  return edge.drop ? edge.line > than.line : std::abs(edge.step) > std::abs(than.step);
}

std::vector<EdgeLine> onePerSide(const std::vector<EdgeLine>& edges) {
  std::vector<EdgeLine> chosen;
  for (const auto& edge : edges) {
    if (!edge.drop && !edge.curl) {
      continue;
    }
    const auto known = std::find_if(chosen.begin(), chosen.end(),
                                    [&](const EdgeLine& other) { return other.side == edge.side; });
    if (known == chosen.end()) {
      chosen.push_back(edge);
    } else if (saysMore(edge, *known)) {
      *known = edge;
    }
  }
  return chosen;
}

std::vector<std::vector<bool>> affectedPoints(const GridReadings& grid,
                                              const std::vector<EdgeLine>& edges) {
  std::vector<std::vector<bool>> affected(grid.y.size(), std::vector<bool>(grid.x.size(), false));
  for (const auto& edge : edges) {
    for (int n = 0; edge.drop && n < edge.line; ++n) {
      const std::size_t line = lineFrom(grid, edge.side, static_cast<std::size_t>(n));
      for (std::size_t row = 0; row < grid.y.size(); ++row) {
        for (std::size_t column = 0; column < grid.x.size(); ++column) {
          affected[row][column] = affected[row][column] || (alongX(edge.side) ? column : row) == line;
        }
      }
    }
  }
  return affected;
}

/// Heights less the plane of the unaffected points; NaN marks the affected ones.
Eigen::MatrixXd planeRemoved(const GridReadings& grid, const std::vector<std::vector<bool>>& affected) {
  Eigen::MatrixXd rest = grid.z;
  std::vector<double> x, y, z;
  for (std::size_t row = 0; row < grid.y.size(); ++row) {
    for (std::size_t column = 0; column < grid.x.size(); ++column) {
      double& height = rest(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column));
      if (affected[row][column]) {
        height = std::nan("");
      } else {
        x.push_back(grid.x[column]);
        y.push_back(grid.y[row]);
        z.push_back(height);
      }
    }
  }
  const auto fit = maths::fitPlane(x, y, z);
  for (std::size_t row = 0; fit && row < grid.y.size(); ++row) {
    for (std::size_t column = 0; column < grid.x.size(); ++column) {
      rest(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)) -=
          fit->plane.at(grid.x[column], grid.y[row]);
    }
  }
  return rest;
}

std::vector<double> neighbours(const Eigen::MatrixXd& heights, Eigen::Index row, Eigen::Index column) {
  std::vector<double> around;
  for (Eigen::Index j = std::max<Eigen::Index>(row - 1, 0); j <= std::min(row + 1, heights.rows() - 1);
       ++j) {
    for (Eigen::Index i = std::max<Eigen::Index>(column - 1, 0);
         i <= std::min(column + 1, heights.cols() - 1); ++i) {
      if ((i != column || j != row) && std::isfinite(heights(j, i))) {
        around.push_back(heights(j, i));
      }
    }
  }
  return around;
}

std::vector<Spike> spikesOf(const Eigen::MatrixXd& heights) {
  std::vector<Spike> points;
  std::vector<double> sizes;
  for (Eigen::Index row = 0; row < heights.rows(); ++row) {
    for (Eigen::Index column = 0; column < heights.cols(); ++column) {
      const auto around = neighbours(heights, row, column);
      if (std::isfinite(heights(row, column)) && !around.empty()) {
        sizes.push_back(heights(row, column) - maths::median(around));
        points.push_back({static_cast<std::size_t>(column), static_cast<std::size_t>(row), sizes.back()});
      }
    }
  }
  std::vector<Spike> spikes;
  const auto scores = maths::modifiedZScores(sizes, smallestScatter);
  for (std::size_t i = 0; scores && i < points.size(); ++i) {
    if (std::abs((*scores)[i]) > spikeScore && std::abs(sizes[i]) > spikeLimit) {
      spikes.push_back(points[i]);
    }
  }
  return spikes;
}

std::vector<HeightStep> stepsOf(const Eigen::MatrixXd& heights) {
  std::vector<HeightStep> steps;
  const auto compare = [&](Eigen::Index row, Eigen::Index column, bool along) {
    const Eigen::Index nextRow = along ? row : row + 1;
    const Eigen::Index nextColumn = along ? column + 1 : column;
    if (nextRow < heights.rows() && nextColumn < heights.cols()) {
      const double size = heights(nextRow, nextColumn) - heights(row, column);
      if (std::abs(size) > stepLimit) {  // never of a point that is not a number
        steps.push_back({static_cast<std::size_t>(column), static_cast<std::size_t>(row), along, size});
      }
    }
  };
  for (Eigen::Index row = 0; row < heights.rows(); ++row) {
    for (Eigen::Index column = 0; column < heights.cols(); ++column) {
      compare(row, column, true);
      compare(row, column, false);
    }
  }
  return steps;
}

}  // namespace

std::vector<EdgeLine> edgeLines(const GridReadings& grid) {
  std::vector<EdgeLine> edges;
  for (const auto& [side, opposite] :
       {std::pair{BedSide::left, BedSide::right}, {BedSide::front, BedSide::back}}) {
    const std::size_t lines = linePlaces(grid, side).size();
    if (lines >= fewestLines) {
      addPair(edges, grid, side, opposite, 1);
    }
    if (lines >= fewestLinesForSecond) {
      addPair(edges, grid, side, opposite, 2);
    }
  }
  return edges;
}

bool GridFaults::hasDrop() const {
  return std::any_of(edges.begin(), edges.end(), [](const EdgeLine& edge) { return edge.drop; });
}

GridFaults findFaults(const GridReadings& grid) {
  GridFaults faults;
  const auto all = edgeLines(grid);
  faults.edges = onePerSide(all);
  for (const auto& edge : faults.hasDrop() ? faults.edges : all) {
    const bool counts = edge.drop || !faults.hasDrop();
    if (counts && std::abs(edge.step) > std::abs(faults.largestEdge)) {
      faults.largestEdge = edge.step;
    }
  }
  faults.affected = affectedPoints(grid, faults.edges);
  const Eigen::MatrixXd heights = planeRemoved(grid, faults.affected);
  faults.spikes = spikesOf(heights);
  faults.steps = stepsOf(heights);
  return faults;
}

}  // namespace fettle
