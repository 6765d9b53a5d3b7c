#include "core/steps/melt_rate/graded.h"

#include <cmath>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

/// A bad height with its last good one; none while the stair is needed and blank.
std::optional<BadHeight> bracketed(const BadHeight& given, const GradedPiece& piece) {
  BadHeight height = given;
  if (!height.lastGood) {
    if (!piece.stair) {
      return std::nullopt;
    }
    height.lastGood = *height.badHeight - *piece.stair;
  }
  if (*height.lastGood < 0) {
    throw Refusal{say(Text::tr("Bad heights, row {0}: {1} mm lies within the first stair of {2} mm, so "
                               "nothing good was printed; print a piece that begins at a lower flow."),
                      height.number, formatNumber(*height.badHeight), formatNumber(*piece.stair))};
  }
  if (*height.lastGood >= *height.badHeight) {
    throw Refusal{
        say(Text::tr("Bad heights, row {0}: the bad height {1} mm is not above the last good one, "
                     "{2} mm."),
            height.number, formatNumber(*height.badHeight), formatNumber(*height.lastGood))};
  }
  return height;
}

Quantity limitOf(const std::vector<BadHeight>& heights, const GradedPiece& piece) {
  std::vector<double> flows;
  double squares = 0;
  for (const auto& height : heights) {
    flows.push_back(*piece.bottomValue + *piece.valuePerMm * (*height.lastGood + *height.badHeight) / 2);
    const double width = (*height.badHeight - *height.lastGood) * *piece.valuePerMm;
    squares += width * width;
  }
  const auto n = static_cast<double>(flows.size());
  std::vector<Contribution> parts{{std::sqrt(squares / n / 12)}};
  if (flows.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(flows) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(maths::mean(flows), "mm3/s", parts);
}

}  // namespace

std::optional<GradedLimit> giveGraded(StepResult& result, const MeltRateInputs& inputs) {
  const auto pieces = included(inputs.graded);
  const auto heights = included(inputs.badHeights);
  if (pieces.size() > 1) {
    throw Refusal{say(Text::tr("Graded piece: {0} rows were entered; the bad heights belong to one piece, "
                               "exclude the others."),
                      pieces.size())};
  }
  if (pieces.empty() || heights.empty()) {
    result.missing.push_back(pieces.empty() ? "graded" : "bad_heights");
    return std::nullopt;
  }
  GradedLimit graded;
  graded.piece = pieces.front();
  for (const auto& height : heights) {
    const auto known = bracketed(height, graded.piece);
    if (!known) {
      result.missing.push_back(fmt::format("graded[{}].stair_mm", graded.piece.number));
      return std::nullopt;
    }
    graded.heights.push_back(*known);
  }
  graded.limit = limitOf(graded.heights, graded.piece);
  result.give("flow_limit", graded.limit);
  if (heights.size() == 1) {
    noteSingleReading(result, Text::tr("The flow limit"));
  }
  return graded;
}

}  // namespace fettle
