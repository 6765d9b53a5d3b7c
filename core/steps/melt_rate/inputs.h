#pragma once
#include <optional>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// One commanded flow and what came out.
struct FlowStep : TableRow {
  std::optional<double> flow, delivered, mass, volume, density;
  void describe(FieldList& columns);
};

/// A piece whose flow grows with height, evenly or in equal stairs.
struct GradedPiece : TableRow {
  std::optional<double> bottomValue, topValue, height;
  std::optional<double> stairs;  ///< how many; none: an even rise
  void describe(FieldList& columns);

  /// The stair of a height, counted from 0; its lower edge belongs to it. Only of a piece with stairs.
  double stairAt(double h) const;
  /// The value in the middle of a stair.
  double valueOfStair(double stair) const;
  /// bottom + (top − bottom)·h/height; with stairs that of the middle of the stair of h.
  double valueAt(double h) const;
};

/// Where a graded piece turns bad.
struct BadHeight : TableRow {
  std::optional<double> lastGood, badHeight;
  void describe(FieldList& columns);
};

/// Cross-section of a printed line.
struct LineSize : TableRow {
  std::optional<double> width, height;
  void describe(FieldList& columns);
  double area() const;  ///< (w − h)·h + π·h²/4: a rectangle with round ends
};

struct MeltRateInputs {
  std::vector<FlowStep> steps;
  std::optional<double> volume, density;  ///< of all steps that have none of their own
  std::vector<GradedPiece> graded;
  std::vector<BadHeight> badHeights;
  double margin = 0.10;  ///< part taken off the lower limit of the flow limit
  std::vector<LineSize> lineSizes;
  std::optional<double> temperature, specificHeat, holdDuty;
  double room = 25;
  void describe(FieldList& fields);
};

}  // namespace fettle
