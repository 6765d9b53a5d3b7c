#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/contract/reach.h"

namespace fettle {

/// What the plan of the bed shows; whatever is not known is left out.
struct PlanOfBed {
  std::optional<Bed> bed;
  std::optional<Rectangle> travel;
  std::string whyNoBed, whyNoTravel;
  std::optional<Place> offset;
  std::optional<double> margin;
  std::vector<Landing> landings;
  std::vector<Place> marks;
};

/// Outlines of the bed, its margin, the carriage's travel and that of the tip; where the points of the
/// probing grid are planned and where they land, each once, by the worst that is wrong with it.
Chart chartOf(const PlanOfBed& plan);

}  // namespace fettle
