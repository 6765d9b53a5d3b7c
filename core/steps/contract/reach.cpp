#include "core/steps/contract/reach.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/measure/text.h"

namespace fettle {
namespace {

// Places typed to the limit are on it: sums of decimals miss by some 1e-14 mm.
constexpr double roundingSlack = 1e-9;

}  // namespace

bool Rectangle::contains(Place place) const {
  return place.x >= minX - roundingSlack && place.x <= maxX + roundingSlack &&
         place.y >= minY - roundingSlack && place.y <= maxY + roundingSlack;
}

Rectangle Rectangle::movedBy(Place offset) const {
  return {minX + offset.x, maxX + offset.x, minY + offset.y, maxY + offset.y};
}

Rectangle Rectangle::shrunkBy(double margin) const {
  return {minX + margin, maxX - margin, minY + margin, maxY - margin};
}

Rectangle Rectangle::cutTo(const Rectangle& other) const {
  return {std::max(minX, other.minX), std::min(maxX, other.maxX), std::max(minY, other.minY),
          std::min(maxY, other.maxY)};
}

std::vector<Place> Rectangle::outline() const {
  return {{minX, minY}, {maxX, minY}, {maxX, maxY}, {minX, maxY}, {minX, minY}};
}

double Bed::insideBy(Place place) const {
  if (radius) {
    return *radius - std::hypot(place.x, place.y);
  }
  return std::min(std::min(place.x - box.minX, box.maxX - place.x),
                  std::min(place.y - box.minY, box.maxY - place.y));
}

std::vector<Place> Bed::outline(double margin) const {
  if (!radius) {
    return box.shrunkBy(margin).outline();
  }
  constexpr int corners = 120;
  std::vector<Place> circle;
  for (int i = 0; i <= corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i % corners) / corners;
    circle.push_back({(*radius - margin) * std::cos(angle), (*radius - margin) * std::sin(angle)});
  }
  return circle;
}

std::optional<Bed> bedOf(const MachineSheet& sheet) {
  if (sheet.bedShape == "disc") {
    if (!sheet.bedRadius) {
      return std::nullopt;
    }
    const double r = *sheet.bedRadius;
    return Bed{{-r, r, -r, r}, r};
  }
  if (!sheet.bedMinX || !sheet.bedMaxX || !sheet.bedMinY || !sheet.bedMaxY) {
    return std::nullopt;
  }
  return Bed{{*sheet.bedMinX, *sheet.bedMaxX, *sheet.bedMinY, *sheet.bedMaxY}, std::nullopt};
}

std::optional<Rectangle> travelOf(const MachineSheet& sheet) {
  if (!sheet.travelMinX || !sheet.travelMaxX || !sheet.travelMinY || !sheet.travelMaxY) {
    return std::nullopt;
  }
  return Rectangle{*sheet.travelMinX, *sheet.travelMaxX, *sheet.travelMinY, *sheet.travelMaxY};
}

std::string noBedSize() {
  return Text::tr("the size of the bed is not on the machine sheet");
}

std::string noTravel() {
  return Text::tr("the travel in x and y is not on the machine sheet");
}

Rectangle reachOfTip(const Rectangle& travel, const Bed& bed, Place offset, double margin) {
  return travel.movedBy(offset).cutTo(bed.box.shrunkBy(margin));
}

bool nothingToReach(const Rectangle& travel, const Bed& bed, Place offset, double margin) {
  const Rectangle reach = reachOfTip(travel, bed, offset, margin);
  if (reach.empty() || !bed.radius) {
    return reach.empty();
  }
  const Place nearest{std::clamp(0.0, reach.minX, reach.maxX), std::clamp(0.0, reach.minY, reach.maxY)};
  return bed.insideBy(nearest) < margin;
}

std::vector<Landing> landings(const ProbingGrid& grid, const std::optional<Bed>& bed,
                              const std::optional<Rectangle>& travel, Place measured, Place asFound,
                              double margin) {
  std::vector<Landing> all;
  const Rectangle& area = grid.area;
  for (int row = 0; row < grid.rows; ++row) {
    for (int column = 0; column < grid.columns; ++column) {
      Landing landing;
      landing.column = column + 1;
      landing.row = row + 1;
      landing.planned = {area.minX + (area.maxX - area.minX) * column / (grid.columns - 1),
                         area.minY + (area.maxY - area.minY) * row / (grid.rows - 1)};
      landing.real = landing.planned + (measured - asFound);
      if (bed) {
        landing.insideBy = bed->insideBy(landing.real);
        landing.offBed = landing.insideBy < -roundingSlack;
        landing.inMargin = !landing.offBed && landing.insideBy < margin - roundingSlack;
      }
      landing.outOfReach = travel && !travel->contains(landing.planned - asFound);
      all.push_back(landing);
    }
  }
  return all;
}

}  // namespace fettle
