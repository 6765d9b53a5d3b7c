#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/machine_sheet.h"

namespace fettle {

/// A place on the bed or of the carriage, mm.
struct Place {
  double x = 0, y = 0;
  friend Place operator+(Place a, Place b) { return {a.x + b.x, a.y + b.y}; }
  friend Place operator-(Place a, Place b) { return {a.x - b.x, a.y - b.y}; }
};

struct Rectangle {
  double minX = 0, maxX = 0, minY = 0, maxY = 0;

  bool empty() const { return minX > maxX || minY > maxY; }
  bool contains(Place place) const;
  Rectangle movedBy(Place offset) const;
  Rectangle shrunkBy(double margin) const;
  Rectangle cutTo(const Rectangle& other) const;
  std::vector<Place> outline() const;  ///< closed: the first corner comes again at the end
  friend bool operator==(const Rectangle&, const Rectangle&) = default;
};

/// The plate that may be touched: a rectangle, or a disc about 0, 0.
struct Bed {
  Rectangle box;
  std::optional<double> radius;  ///< of a disc

  /// How far inside the edge a place lies; below zero outside.
  double insideBy(Place place) const;
  std::vector<Place> outline(double margin) const;
};

/// What the machine sheet says; none while a number is missing.
std::optional<Bed> bedOf(const MachineSheet& sheet);
std::optional<Rectangle> travelOf(const MachineSheet& sheet);
/// The reasons, in words.
std::string noBedSize();
std::string noTravel();

/// Where the probe tip can touch the bed: the carriage's travel moved by the offset of the tip from the
/// nozzle, cut to the bed without its margin. Of a disc this is the rectangle round it.
Rectangle reachOfTip(const Rectangle& travel, const Bed& bed, Place offset, double margin);
/// True when no place is within both the moved travel and the bed less its margin.
bool nothingToReach(const Rectangle& travel, const Bed& bed, Place offset, double margin);

/// Where the tip is meant to land: columns × rows places at equal distances, ends included.
struct ProbingGrid {
  Rectangle area;
  int columns = 2, rows = 2;
};

/// One place of a grid and what becomes of it.
struct Landing {
  int column = 1, row = 1;  ///< counted from 1 at the lowest x and y
  Place planned, real;
  double insideBy = 0;  ///< of the real place, when the bed is known
  bool offBed = false, inMargin = false, outOfReach = false;
};

/// The carriage goes to planned − asFound, so the tip lands at planned + (measured − asFound). Out of
/// reach: the carriage's place is outside its travel. The three marks do not exclude each other, but a
/// place off the bed is not also in the margin. An unknown bed or travel marks nothing.
std::vector<Landing> landings(const ProbingGrid& grid, const std::optional<Bed>& bed,
                              const std::optional<Rectangle>& travel, Place measured, Place asFound,
                              double margin);

}  // namespace fettle
