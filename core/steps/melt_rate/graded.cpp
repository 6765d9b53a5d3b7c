#include "core/steps/melt_rate/graded.h"

#include <cmath>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/melt_rate/results.h"

namespace fettle {
namespace {

[[noreturn]] void refuse(const BadHeight& height, const std::string& sentence) {
  throw Refusal{say(Text::tr("Bad heights, row {0}: {1}"), height.number, sentence),
                fmt::format("bad_heights[{}]", height.number)};
}

/// A bad height with its last good one; none while the stairs are needed and blank.
std::optional<BadHeight> bracketed(const BadHeight& given, const GradedPiece& piece) {
  BadHeight height = given;
  const std::string bad = formatNumber(*height.badHeight);
  if (*height.badHeight > *piece.height) {
    refuse(height, say(Text::tr("{0} mm is above the piece, which is {1} mm high."), bad,
                       formatNumber(*piece.height)));
  }
  if (!height.lastGood) {
    if (!piece.stairs) {
      return std::nullopt;
    }
    const double stair = piece.stairAt(*height.badHeight);
    if (stair < 1) {
      refuse(height, say(Text::tr("{0} mm lies within the first stair of {1} mm, so nothing good was "
                                  "printed; print a piece that begins at a lower flow."),
                         bad, formatNumber(*piece.height / *piece.stairs)));
    }
    height.lastGood = (stair - 0.5) * *piece.height / *piece.stairs;
  }
  const std::string good = formatNumber(*height.lastGood);
  if (*height.lastGood >= *height.badHeight) {
    refuse(height,
           say(Text::tr("the bad height {0} mm is not above the last good one, {1} mm."), bad, good));
  }
  if (piece.stairs && piece.stairAt(*height.lastGood) == piece.stairAt(*height.badHeight)) {
    refuse(height, say(Text::tr("{0} mm, the last good height, and {1} mm, the bad one, lie on one stair, "
                                "which has one flow; leave the last good height blank or give one on a "
                                "lower stair."),
                       good, bad));
  }
  return height;
}

Quantity limitOf(const std::vector<BadHeight>& heights, const GradedPiece& piece) {
  std::vector<double> flows;
  double squares = 0;
  for (const auto& height : heights) {
    const double good = piece.valueAt(*height.lastGood);
    const double bad = piece.valueAt(*height.badHeight);
    flows.push_back((good + bad) / 2);
    squares += (bad - good) * (bad - good);
  }
  const auto n = static_cast<double>(flows.size());
  std::vector<Contribution> parts{{std::sqrt(squares / n / 12)}};
  if (flows.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(flows) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(maths::mean(flows), "mm3/s", parts);
}

void refuseUnusable(const std::vector<GradedPiece>& pieces) {
  if (pieces.size() > 1) {
    throw Refusal{say(Text::tr("Graded piece: {0} rows were entered; the bad heights belong to one piece, "
                               "exclude the others."),
                      pieces.size()),
                  "graded"};
  }
  const GradedPiece& piece = pieces.front();
  if (*piece.topValue <= *piece.bottomValue) {
    throw Refusal{
        say(Text::tr("Graded piece, row {0}: the flow at the top, {1} mm³/s, is not above that at "
                     "the bottom, {2} mm³/s."),
            piece.number, formatNumber(*piece.topValue), formatNumber(*piece.bottomValue)),
        fmt::format("graded[{}]", piece.number)};
  }
}

/// The rows that count, each with both heights. Those that cannot be used are refused.
std::vector<BadHeight> usable(StepResult& result, const std::vector<BadHeight>& heights,
                              const GradedPiece& piece, bool& lacksStairs) {
  std::vector<BadHeight> kept;
  std::vector<Refusal> refusals;
  for (const auto& height : heights) {
    try {
      if (const auto known = bracketed(height, piece)) {
        kept.push_back(*known);
      } else {
        lacksStairs = true;
      }
    } catch (const Refusal& refusal) {
      refusals.push_back(refusal);
    }
  }
  if (kept.empty() && !lacksStairs) {
    throw refusals.front();
  }
  for (const auto& refusal : refusals) {
    result.refuse(refusal);
  }
  return kept;
}

}  // namespace

std::optional<GradedLimit> giveGraded(StepResult& result, const MeltRateInputs& inputs) {
  const auto& key = keysOf<MeltRateResults>();
  const auto pieces = included(inputs.graded);
  const auto heights = included(inputs.badHeights);
  if (!pieces.empty()) {
    refuseUnusable(pieces);
  }
  if (pieces.empty() || heights.empty()) {
    result.wantFor(key.flowLimit, {pieces.empty() ? "graded" : "bad_heights"});
    return std::nullopt;
  }
  GradedLimit graded;
  graded.piece = pieces.front();
  bool lacksStairs = false;
  graded.heights = usable(result, heights, graded.piece, lacksStairs);
  const std::string stairs = fmt::format("graded[{}].stairs", graded.piece.number);
  if (graded.heights.empty()) {
    result.wantFor(key.flowLimit, {stairs});
    return std::nullopt;
  }
  if (lacksStairs) {
    result.want({stairs});
  }
  graded.limit = limitOf(graded.heights, graded.piece);
  result.give(key.flowLimit, graded.limit);
  if (graded.heights.size() == 1) {
    noteSingleReading(result, Text::tr("The flow limit"));
  }
  return graded;
}

}  // namespace fettle
