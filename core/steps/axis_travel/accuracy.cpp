#include "core/steps/axis_travel/accuracy.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/axis_travel/run_findings.h"

namespace fettle {
namespace {

constexpr double sameTarget = 1e-3;  // mm

/// A figure as a sum over approaches: how much of each mean and of each s it holds.
class Sum {
 public:
  void add(const TargetRuns& target, const ApproachRuns& runs, double ofMean, double ofSpread) {
    m_value += ofMean * runs.mean() + ofSpread * runs.spread().value_or(0);
    auto& share = m_shares[&runs];
    share.mean += ofMean;
    share.spread += ofSpread;
    m_lowest = std::min(m_lowest, target.target);
    m_highest = std::max(m_highest, target.target);
  }
  double value() const { return m_value; }
  Quantity quantity(const Instrument& instrument) const {
    std::vector<Contribution> parts;
    for (const auto& [runs, share] : m_shares) {
      const Quantity mean = runs->meanQuantity(instrument);
      parts.push_back({std::abs(share.mean) * *mean.u, mean.dof});
      if (const auto s = runs->spread(); s && share.spread != 0) {
        const auto dof = static_cast<double>(runs->deviations.size() - 1);
        const double u = spreadUncertainty(*s, runs->deviations.size(), instrument);
        parts.push_back({std::abs(share.spread) * u, dof});
      }
    }
    if (m_highest - m_lowest > sameTarget) {
      parts.push_back({instrument.limitOfError(m_highest - m_lowest) / std::sqrt(3.0)});
    }
    return combinedQuantity(m_value, "mm", parts);
  }
  Sum less(const Sum& other) const {
    Sum difference = *this;
    difference.m_value -= other.m_value;
    for (const auto& [runs, share] : other.m_shares) {
      auto& own = difference.m_shares[runs];
      own.mean -= share.mean;
      own.spread -= share.spread;
    }
    difference.m_lowest = std::min(m_lowest, other.m_lowest);
    difference.m_highest = std::max(m_highest, other.m_highest);
    return difference;
  }

 private:
  struct Share {
    double mean = 0, spread = 0;
  };
  double m_value = 0;
  std::map<const ApproachRuns*, Share> m_shares;
  double m_lowest = std::numeric_limits<double>::infinity();
  double m_highest = -std::numeric_limits<double>::infinity();
};

bool smaller(const Sum& first, const Sum& second) {
  return first.value() < second.value();
}

/// Of equals the first for the upper and the last for the lower end: a range of zero over several targets
/// still compares two of them.
Sum range(const std::vector<Sum>& upper, const std::vector<Sum>& lower) {
  return std::max_element(upper.begin(), upper.end(), smaller)
      ->less(*std::min_element(lower.rbegin(), lower.rend(), smaller));
}

/// x̄ + factor·s of every approach.
std::vector<Sum> means(const AxisRuns& runs, double factor) {
  std::vector<Sum> sums;
  for (const auto& target : runs.targets) {
    for (const ApproachRuns* side : {&target.up, &target.down}) {
      if (side->any()) {
        sums.emplace_back().add(target, *side, 1, factor);
      }
    }
  }
  return sums;
}

std::vector<Sum> middles(const AxisRuns& runs) {
  std::vector<Sum> sums;
  for (const auto& target : runs.targets) {
    if (target.bothSides()) {
      Sum& middle = sums.emplace_back();
      middle.add(target, target.up, 0.5, 0);
      middle.add(target, target.down, 0.5, 0);
    }
  }
  return sums;
}

/// The three terms of R at every target.
std::vector<Sum> repeatabilities(const AxisRuns& runs) {
  std::vector<Sum> sums;
  for (const auto& target : runs.targets) {
    for (const ApproachRuns* side : {&target.up, &target.down}) {
      if (side->any()) {
        sums.emplace_back().add(target, *side, 0, 4);
      }
    }
    if (target.bothSides()) {
      const double sign = target.up.mean() < target.down.mean() ? -1 : 1;
      Sum& both = sums.emplace_back();
      both.add(target, target.up, sign, 2);
      both.add(target, target.down, -sign, 2);
    }
  }
  return sums;
}

void giveReversal(StepResult& result, const AxisRuns& runs, const Instrument& instrument) {
  std::vector<Quantity> reversals;
  for (const auto& target : runs.targets) {
    if (target.bothSides()) {
      reversals.push_back(target.reversal(instrument));
    }
  }
  if (reversals.empty()) {
    const std::string why = Text::tr("no target was approached from both sides");
    for (const char* id : {".reversal", ".reversal_mean", ".mean_deviation"}) {
      result.withhold(runs.axis + id, "mm", why);
    }
    result.addFinding(
        "one-direction", Severity::caution,
        say(Text::tr("{0}: no target was approached from both sides. Reversal stays unknown, and R, E "
                     "and A hold for one direction each."),
            runs.axis));
    return;
  }
  Quantity greatest = *std::max_element(reversals.begin(), reversals.end(), [](auto& a, auto& b) {
    return std::abs(a.value) < std::abs(b.value);
  });
  greatest.value = std::abs(greatest.value);
  const auto count = static_cast<double>(reversals.size());
  double sum = 0;
  std::vector<Contribution> parts;
  for (const auto& reversal : reversals) {
    sum += reversal.value;
    parts.push_back({*reversal.u / count, reversal.dof});
  }
  result.give(runs.axis + ".reversal", greatest);
  result.give(runs.axis + ".reversal_mean", combinedQuantity(sum / count, "mm", parts));
  const auto both = middles(runs);
  result.give(runs.axis + ".mean_deviation", range(both, both).quantity(instrument));
}

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

void addMove(AxisRuns& runs, const AxisMove& move) {
  if (*move.direction == 0) {
    throw Refusal{say(Text::tr("Moves, row {0}: direction 0 is not possible; 1 for a target approached "
                               "towards plus, -1 for one approached towards minus."),
                      move.number)};
  }
  runs.moves.push_back(move);
  TargetRuns& target = targetOf(runs, *move.target);
  ApproachRuns& side = *move.direction > 0 ? target.up : target.down;
  side.deviations.push_back(*move.measured - *move.target);
  side.rows.push_back(move.number);
}

Extent extentOf(const std::vector<Sum>& upper, const std::vector<Sum>& lower) {
  return {std::min_element(lower.begin(), lower.end(), smaller)->value(),
          std::max_element(upper.begin(), upper.end(), smaller)->value()};
}

}  // namespace

Extent extentOfMeans(const AxisRuns& runs, double factor) {
  return extentOf(means(runs, factor), means(runs, -factor));
}

std::optional<Extent> extentOfMiddles(const AxisRuns& runs) {
  const auto both = middles(runs);
  return both.empty() ? std::nullopt : std::optional(extentOf(both, both));
}

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

std::vector<AxisRuns> runsByAxis(const std::vector<AxisMove>& moves) {
  std::map<std::string, AxisRuns> byAxis;
  for (const auto& move : included(moves)) {
    AxisRuns& runs = byAxis[move.axis];
    runs.axis = move.axis;
    addMove(runs, move);
  }
  std::vector<AxisRuns> all;
  for (auto& [axis, runs] : byAxis) {
    if (runs.targets.size() < 2) {
      throw Refusal{say(Text::tr("Moves: all moves of {0} have the target {1} mm; targets along the whole "
                                 "travel are needed, five or more."),
                        axis, formatNumber(runs.targets.front().target))};
    }
    std::sort(runs.targets.begin(), runs.targets.end(),
              [](const TargetRuns& a, const TargetRuns& b) { return a.target < b.target; });
    all.push_back(std::move(runs));
  }
  return all;
}

void giveAccuracy(StepResult& result, const AxisRuns& runs, const Instrument& instrument) {
  giveReversal(result, runs, instrument);
  result.give(runs.axis + ".systematic_deviation",
              range(means(runs, 0), means(runs, 0)).quantity(instrument));
  if (runs.fewestRuns() < 2) {
    const std::string why = Text::tr("a target has one run from one side: its scatter is not known");
    result.withhold(runs.axis + ".repeatability", "mm", why);
    result.withhold(runs.axis + ".accuracy", "mm", why);
  } else {
    const auto terms = repeatabilities(runs);
    result.give(runs.axis + ".repeatability",
                std::max_element(terms.begin(), terms.end(), smaller)->quantity(instrument));
    result.give(runs.axis + ".accuracy", range(means(runs, 2), means(runs, -2)).quantity(instrument));
  }
  noteRuns(result, runs, instrument);
}

}  // namespace fettle
