#include "core/steps/axis_travel/runs.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/axis_travel/results.h"

namespace fettle {
namespace {

TargetRuns& targetOf(AxisRuns& runs, double target) {
  const auto known = std::find_if(runs.targets.begin(), runs.targets.end(), [&](const TargetRuns& other) {
    return std::abs(other.target - target) <= sameTarget;
  });
  if (known != runs.targets.end()) {
    return *known;
  }
  runs.targets.push_back({target, {}, {}});
  return runs.targets.back();
}

void addMove(StepResult& result, AxisRuns& runs, const AxisMove& move) {
  if (*move.direction == 0) {
    result.refuse({say(Text::tr("Moves, row {0}: direction 0 is not possible; 1 for a target approached "
                                "towards plus, -1 for one approached towards minus."),
                       move.number),
                   fmt::format("moves[{}].direction", move.number)});
    return;
  }
  runs.moves.push_back(move);
  TargetRuns& target = targetOf(runs, *move.target);
  ApproachRuns& side = *move.direction > 0 ? target.up : target.down;
  side.deviations.push_back(*move.measured - *move.target);
  side.rows.push_back(move.number);
}

void expectTargets(const AxisRuns& runs) {
  if (runs.targets.size() < 2) {
    throw Refusal{say(Text::tr("Moves: all moves of {0} have the target {1} mm; targets along the whole "
                               "travel are needed, five or more."),
                      runs.axis, formatNumber(runs.targets.front().target)),
                  fmt::format("moves[{}].target_mm", runs.moves.front().number)};
  }
}

}  // namespace

double spreadUncertainty(double spread, std::size_t count, const Instrument& instrument) {
  return std::max(spread, instrument.r / std::sqrt(12.0)) / std::sqrt(2 * static_cast<double>(count - 1));
}

double ApproachRuns::mean() const {
  return maths::mean(deviations);
}

std::optional<double> ApproachRuns::spread() const {
  return deviations.size() < 2 ? std::nullopt : std::optional(maths::sampleStandardDeviation(deviations));
}

Quantity ApproachRuns::meanQuantity(const Instrument& instrument) const {
  return meanOfReadingsWithoutCommonError(deviations, instrument, "mm");
}

Quantity TargetRuns::reversal(const Instrument& instrument) const {
  const Quantity from = up.meanQuantity(instrument);
  const Quantity back = down.meanQuantity(instrument);
  const Contribution parts[] = {{*from.u, from.dof}, {*back.u, back.dof}};
  return combinedQuantity(from.value - back.value, "mm", parts);
}

std::size_t AxisRuns::fewestRuns() const {
  std::size_t fewest = moves.size();
  for (const auto& target : targets) {
    for (const ApproachRuns* side : {&target.up, &target.down}) {
      fewest = side->any() ? std::min(fewest, side->deviations.size()) : fewest;
    }
  }
  return fewest;
}

std::vector<AxisRuns> runsByAxis(StepResult& result, const std::vector<AxisMove>& moves) {
  const auto& key = keysOf<AxisTravelResults>();
  std::map<std::string, AxisRuns> byAxis;
  for (const auto& move : included(moves)) {
    AxisRuns& runs = byAxis[move.axis];
    runs.axis = move.axis;
    addMove(result, runs, move);
  }
  std::vector<AxisRuns> all;
  for (auto& [axis, runs] : byAxis) {
    if (runs.moves.empty() ||
        !result.attempt({key.repeatability(axis), key.reversal(axis), key.scaleError(axis)},
                        [&one = runs] { expectTargets(one); })) {
      continue;
    }
    std::sort(runs.targets.begin(), runs.targets.end(),
              [](const TargetRuns& a, const TargetRuns& b) { return a.target < b.target; });
    all.push_back(std::move(runs));
  }
  return all;
}

}  // namespace fettle
