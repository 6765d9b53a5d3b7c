#include "core/maths/contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <unordered_map>

namespace fettle::maths {
namespace {

/// A side of a cell, numbered over the whole net: even along x, odd along y.
using Side = std::size_t;

struct Net {
  double level;
  std::span<const double> x, y;
  std::span<const std::vector<double>> z;

  Side alongX(std::size_t i, std::size_t j) const { return 2 * (j * x.size() + i); }
  Side alongY(std::size_t i, std::size_t j) const { return alongX(i, j) + 1; }

  /// Where the line crosses a side.
  ContourPoint crossing(Side side) const {
    const std::size_t i = (side / 2) % x.size(), j = (side / 2) / x.size();
    const bool isAlongX = side % 2 == 0;
    const double from = z[j][i], to = isAlongX ? z[j][i + 1] : z[j + 1][i];
    const double part = (level - from) / (to - from);
    return isAlongX ? ContourPoint{std::lerp(x[i], x[i + 1], part), y[j]}
                    : ContourPoint{x[i], std::lerp(y[j], y[j + 1], part)};
  }
};

/// The one or two sides that a line reaches from a side: it crosses at most two cells.
using Links = std::unordered_map<Side, std::array<std::optional<Side>, 2>>;

void link(Links& links, Side from, Side to) {
  for (const auto& [a, b] : {std::pair{from, to}, std::pair{to, from}}) {
    auto& ends = links[a];
    ends[ends[0] ? 1 : 0] = b;
  }
}

void marchCell(const Net& net, std::size_t i, std::size_t j, Links& links) {
  const double corners[] = {net.z[j][i], net.z[j][i + 1], net.z[j + 1][i + 1], net.z[j + 1][i]};
  const double sum = corners[0] + corners[1] + corners[2] + corners[3];
  if (!std::isfinite(sum)) {
    return;
  }
  // Round the cell: side k runs from corner k to corner k + 1.
  const Side sides[] = {net.alongX(i, j), net.alongY(i + 1, j), net.alongX(i, j + 1), net.alongY(i, j)};
  const auto above = [&](std::size_t k) { return corners[k % 4] >= net.level; };
  std::vector<Side> crossed;
  for (std::size_t k = 0; k < 4; ++k) {
    if (above(k) != above(k + 1)) {
      crossed.push_back(sides[k]);
    }
  }
  if (crossed.size() == 2) {
    link(links, crossed[0], crossed[1]);
  } else if (crossed.size() == 4) {
    // When the middle is on the side of corner 0, the lines cut off corners 1 and 3, else 0 and 2.
    const bool cutsOddCorners = (sum / 4 >= net.level) == above(0);
    link(links, sides[cutsOddCorners ? 0 : 3], sides[cutsOddCorners ? 1 : 0]);
    link(links, sides[cutsOddCorners ? 2 : 1], sides[cutsOddCorners ? 3 : 2]);
  }
}

/// Walks from a side to the end of its line and forgets the links it used.
Contour takeLine(const Net& net, Links& links, Side start) {
  Contour contour;
  std::optional<Side> here = start;
  while (here) {
    contour.points.push_back(net.crossing(*here));
    auto& ends = links.at(*here);
    auto& next = ends[0] ? ends[0] : ends[1];
    const std::optional<Side> reached = next;
    next.reset();
    if (reached) {
      auto& back = links.at(*reached);
      (back[0] == here ? back[0] : back[1]).reset();
    }
    contour.closed = reached == start;
    here = reached;
    if (contour.closed) {
      contour.points.push_back(contour.points.front());
      break;
    }
  }
  return contour;
}

}  // namespace

std::vector<Contour> contoursAt(double level, std::span<const double> x, std::span<const double> y,
                                std::span<const std::vector<double>> z) {
  const Net net{level, x, y, z};
  Links links;
  for (std::size_t j = 0; j + 1 < y.size(); ++j) {
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
      marchCell(net, i, j, links);
    }
  }
  std::vector<Side> order;
  for (const auto& [side, ends] : links) {
    order.push_back(side);
  }
  // Open lines first and from their ends; what is left then is closed. Sorted: the same lines in every run.
  std::sort(order.begin(), order.end());
  const auto isEnd = [&links](Side side) { return links.at(side)[0] && !links.at(side)[1]; };
  std::stable_partition(order.begin(), order.end(), isEnd);
  std::vector<Contour> contours;
  for (const Side side : order) {
    if (links.at(side)[0] || links.at(side)[1]) {
      contours.push_back(takeLine(net, links, side));
    }
  }
  return contours;
}

}  // namespace fettle::maths
