#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// What to look at, in the order of the walk round the machine.
std::vector<Choice> mechanicsItems();

/// The two diagonals of one face of the frame.
struct FaceDiagonals : TableRow {
  std::string face;
  std::optional<double> p, q, length;
  void describe(FieldList& columns);
};

/// The force that moves an axis by hand at one place.
struct DragReading : TableRow {
  std::string axis, position;
  std::optional<double> force;
  void describe(FieldList& columns);
};

struct MechanicsInputs {
  std::vector<ChecklistAnswer> checks;
  std::vector<FaceDiagonals> diagonals;
  std::vector<DragReading> drag;
  void describe(FieldList& fields);
};

/// Rows of `drag` for five places along each axis, forces blank.
Json dragPlaces();

}  // namespace fettle
