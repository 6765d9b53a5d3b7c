#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// One commanded flow and what came out.
struct FlowStep : TableRow {
  std::optional<double> flow, delivered, mass, volume, density;
  void describe(FieldList& columns);
};

/// A piece whose flow grows with height.
struct GradedPiece : TableRow {
  std::optional<double> bottomValue, valuePerMm, stair;
  void describe(FieldList& columns);
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

/// How much plastic the hot end melts before it falls behind.
///
/// From flow steps: see melt_rate/steps.h. From a graded piece: see melt_rate/graded.h. Steps count before
/// a graded piece. `flow_safe` = (1 − margin)·lower 95 % limit of `flow_limit`. Speeds of a line: v = Q/A,
/// A = (w − h)·h + π·h²/4 for w ≥ h. Heat: `heat_needed_W` = flow_limit·(ρ/1000)·cp·(T − T_room), against
/// `heat_available_W` = hot end power·(1 − hold duty); the hold duty is typed, else (T − T_room)/gain of an
/// accepted heater-control of the hot end. Refused: fewer than three steps or different flows, a row whose
/// mass contradicts its delivered part, a bad height not above the last good one, a line higher than wide.
StepResult evaluate(const MeltRateInputs& inputs, const StepContext& context);

Step meltRateStep();

}  // namespace fettle
