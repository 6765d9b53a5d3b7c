#include "core/steps/resonance/choice.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/maths/path_deviation.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/step_context.h"

namespace fettle {
namespace {

constexpr double gridStep = 0.1;  // Hz
constexpr std::size_t spreadSteps = 41;
constexpr double bandLimit = 0.05;
constexpr double shaperTolerance = 0.05;
constexpr double nearLeast = 1.25;
constexpr double rounding = 1e-9;

/// Whole multiples of 0.1 Hz, both ends included.
struct Grid {
  long first = 0;
  long last = 0;
  static double frequency(long multiple) { return static_cast<double>(multiple) / 10.0; }
};

Grid gridOver(std::span<const ModeSet> sets) {
  double lowest = std::numeric_limits<double>::infinity();
  double highest = 0;
  for (const ModeSet& set : sets) {
    for (const MeasuredMode& mode : set.modes) {
      lowest = std::min(lowest, mode.frequency);
      highest = std::max(highest, mode.frequency);
    }
  }
  Grid grid{std::lround(std::ceil(0.7 * lowest / gridStep - rounding)),
            std::lround(std::floor(1.5 * highest / gridStep + rounding))};
  grid.first = std::max(grid.first, 1L);
  grid.last = std::max(grid.last, grid.first);
  return grid;
}

const MeasuredMode& heaviest(std::span<const ModeSet> sets) {
  const MeasuredMode* greatest = nullptr;
  for (const ModeSet& set : sets) {
    for (const MeasuredMode& mode : set.modes) {
      greatest = !greatest || mode.weight() > greatest->weight() ? &mode : greatest;
    }
  }
  return *greatest;
}

/// Searches the grid from above. The set that was worst at the last frequency is looked at first, so that
/// a frequency that cannot count is left early.
class FrequencySearch {
 public:
  explicit FrequencySearch(const SearchTerms& terms) : m_terms(terms) {
    for (std::size_t s = 0; s < terms.sets.size(); ++s) {
      m_order.push_back(s);
    }
  }

  maths::Shaper operator()(const maths::ShaperShape& shape, const Grid& grid) {
    double least = std::numeric_limits<double>::infinity();
    maths::Shaper best;
    for (long multiple = grid.last; multiple >= grid.first; --multiple) {
      maths::Shaper shaper = maths::scaledShaper(shape, Grid::frequency(multiple));
      const double worst = worstUpTo(shaper, std::max(least, m_terms.residualLimit));
      if (worst < least) {
        least = worst;
        best = std::move(shaper);
      }
      if (worst <= m_terms.residualLimit) {
        break;
      }
    }
    return best;
  }

 private:
  /// The worst residual, or any one over `bound`.
  double worstUpTo(const maths::Shaper& shaper, double bound) {
    double worst = 0;
    for (std::size_t i = 0; i < m_order.size(); ++i) {
      worst = std::max(worst, residualOf(m_terms.sets[m_order[i]], shaper, m_terms.allowance));
      if (worst > bound) {
        std::rotate(m_order.begin(), m_order.begin() + static_cast<std::ptrdiff_t>(i),
                    m_order.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        break;
      }
    }
    return worst;
  }

  const SearchTerms& m_terms;
  std::vector<std::size_t> m_order;
};

/// Standard uncertainty of the residual of a shaper that stays as it is: numeric partial derivatives by
/// f, ζ and c of every mode of the set (JCGM 100:2008, 5.1.2).
Contribution residualError(const ModeSet& set, const maths::Shaper& shaper, double allowance) {
  double squares = 0;
  const std::array parts{std::pair{&MeasuredMode::frequency, &MeasuredMode::frequencyError},
                         std::pair{&MeasuredMode::damping, &MeasuredMode::dampingError},
                         std::pair{&MeasuredMode::coefficient, &MeasuredMode::coefficientError}};
  for (std::size_t k = 0; k < set.modes.size(); ++k) {
    for (const auto& [value, error] : parts) {
      const double step = 0.1 * (set.modes[k].*error);
      ModeSet moved = set;
      moved.modes[k].*value += step;
      const double up = residualOf(moved, shaper, allowance);
      moved.modes[k].*value -= 2 * step;
      squares += std::pow((up - residualOf(moved, shaper, allowance)) / 0.2, 2);
    }
  }
  return {std::sqrt(squares), set.dof > 0 ? set.dof : infiniteDegreesOfFreedom};
}

/// u(f)/f of the frequency found. Where it is the edge of the limit, by the implicit derivative
/// u(residual)/|d residual/df| and half a step of the grid, r²/12; at the top of the grid or at the least
/// residual it follows the mode that sets the scale.
std::optional<Contribution> frequencyError(const Candidate& candidate, const SearchTerms& terms,
                                           const Grid& grid) {
  const ModeSet& set = terms.sets[candidate.decidingSet];
  const double frequency = candidate.shaper.frequency;
  const bool atTop = frequency >= Grid::frequency(grid.last);
  const double resolution = gridStep / std::sqrt(12.0) / frequency;
  if (!candidate.withinLimit || atTop) {
    const auto by = [](const MeasuredMode& a, const MeasuredMode& b) { return a.frequency < b.frequency; };
    const MeasuredMode& scale =
        atTop ? *std::max_element(set.modes.begin(), set.modes.end(), by) : set.modes.front();
    const std::array errors{
        Contribution{scale.frequencyError / scale.frequency, candidate.residualError.dof},
        Contribution{resolution}};
    return combined(errors);
  }
  const auto residualAt = [&](double f) {
    return residualOf(set, maths::scaledShaper(candidate.shape, f), terms.allowance);
  };
  const double slope =
      (residualAt(frequency + 0.5 * gridStep) - residualAt(frequency - 0.5 * gridStep)) / gridStep;
  const double relative = candidate.residualError.u / (std::abs(slope) * frequency);
  constexpr double nothingTold = 0.2;
  if (!(relative < nothingTold)) {
    return std::nullopt;
  }
  const std::array errors{Contribution{relative, candidate.residualError.dof}, Contribution{resolution}};
  return combined(errors);
}

Candidate candidateOf(maths::ShaperKind kind, const maths::ShaperShape& shape, FrequencySearch& search,
                      const SearchTerms& terms, const Grid& grid) {
  Candidate candidate;
  candidate.kind = kind;
  candidate.shape = shape;
  candidate.shaper = search(shape, grid);
  const WorstResidual worst = worstResidual(terms.sets, candidate.shaper, terms.allowance);
  candidate.residual = worst.value;
  candidate.decidingSet = worst.set;
  candidate.withinLimit = worst.value <= terms.residualLimit;
  candidate.residualError = residualError(terms.sets[worst.set], candidate.shaper, terms.allowance);
  candidate.relativeError = frequencyError(candidate, terms, grid);
  candidate.band = maths::insensitiveBand(candidate.shaper, shape.damping, bandLimit);
  candidate.duration = maths::shaperDuration(candidate.shaper);
  candidate.sigma = std::sqrt(maths::shaperVariance(candidate.shaper));
  return candidate;
}

std::size_t bestOf(const std::vector<Candidate>& candidates) {
  const auto least = std::min_element(candidates.begin(), candidates.end(),
                                      [](const auto& a, const auto& b) { return a.residual < b.residual; });
  const bool anyWithin =
      std::any_of(candidates.begin(), candidates.end(), [](const auto& c) { return c.withinLimit; });
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < candidates.size(); ++i) {
    const bool counts =
        anyWithin ? candidates[i].withinLimit : candidates[i].residual <= nearLeast * least->residual;
    if (counts && (!best || candidates[i].accelerationLimit > candidates[*best].accelerationLimit)) {
      best = i;
    }
  }
  return *best;
}

std::string percent(double share) {
  return formatFixed(100 * share, share < 0.1 ? 1 : 0);
}

}  // namespace

double residualOf(const ModeSet& set, const maths::Shaper& shaper, double allowance) {
  double numerator = 0;
  double denominator = 0;
  for (const MeasuredMode& mode : set.modes) {
    const double weight = mode.weight();
    const double largest =
        maths::largestResidual(shaper, mode.frequency * (1 - allowance), mode.frequency * (1 + allowance),
                               mode.damping, spreadSteps);
    numerator += weight * weight * largest * largest;
    denominator += weight * weight;
  }
  return std::sqrt(numerator / denominator);
}

WorstResidual worstResidual(std::span<const ModeSet> sets, const maths::Shaper& shaper, double allowance) {
  WorstResidual worst;
  for (std::size_t s = 0; s < sets.size(); ++s) {
    const double residual = residualOf(sets[s], shaper, allowance);
    if (s == 0 || residual > worst.value) {
      worst = {residual, s};
    }
  }
  return worst;
}

SearchTerms termsOf(const std::vector<ModeSet>& sets, const ChoiceRules& rules) {
  return {sets, rules.allowance, rules.residualLimit};
}

ShaperChoice searchShapers(const SearchTerms& terms, const maths::Progress& progress) {
  const Grid grid = gridOver(terms.sets);
  ShaperChoice choice;
  choice.damping = heaviest(terms.sets).damping;
  choice.lowest = Grid::frequency(grid.first);
  choice.highest = Grid::frequency(grid.last);
  FrequencySearch search(terms);
  double done = 0;
  for (const maths::ShaperKind kind : maths::shaperKinds) {
    if (progress && !progress(done / static_cast<double>(maths::shaperKinds.size()))) {
      throw Cancelled{};
    }
    done += 1;
    if (const auto shape = maths::shaperShape(kind, choice.damping, shaperTolerance)) {
      choice.candidates.push_back(candidateOf(kind, *shape, search, terms, grid));
    }
  }
  return choice;
}

std::optional<ShaperChoice> proposeShaper(ShaperChoice found, double deviation) {
  if (found.candidates.empty()) {
    return std::nullopt;
  }
  for (Candidate& candidate : found.candidates) {
    candidate.accelerationLimit = maths::accelerationLimit(candidate.shaper, deviation);
    candidate.cornerSpeedLimit =
        maths::cornerSpeedLimit(candidate.shaper, candidate.accelerationLimit, deviation);
  }
  found.proposed = bestOf(found.candidates);
  return found;
}

std::string shaperLabel(maths::ShaperKind kind) {
  switch (kind) {
    case maths::ShaperKind::zv:
      return "ZV";
    case maths::ShaperKind::zvd:
      return "ZVD";
    case maths::ShaperKind::zvdd:
      return "ZVDD";
    case maths::ShaperKind::ei:
      return "EI";
    case maths::ShaperKind::eiTwoHump:
      return Text::tr("two-hump EI");
    case maths::ShaperKind::eiThreeHump:
      return Text::tr("three-hump EI");
  }
  return {};
}

std::string reasonOf(const ShaperChoice& choice, std::size_t candidate, double residualLimit) {
  const Candidate& one = choice.candidates[candidate];
  const Candidate& best = choice.best();
  const std::string left = percent(one.residual);
  const std::string limit = percent(residualLimit);
  const std::string acceleration = formatPlain(one.accelerationLimit);
  const bool isBest = candidate == choice.proposed;
  if (isBest && one.withinLimit) {
    return say(Text::tr("Proposed: it leaves {0} % where {1} % may be left, and of those that do it allows "
                        "the highest acceleration, {2} mm/s²."),
               left, limit, acceleration);
  }
  if (isBest) {
    return say(Text::tr("Proposed for want of a better: no shaper keeps to {0} %; this one leaves {1} % "
                        "and of those near the least it allows the highest acceleration, {2} mm/s²."),
               limit, left, acceleration);
  }
  if (one.withinLimit) {
    return say(Text::tr("It leaves {0} %, but allows only {1} mm/s² where {2} allows {3} mm/s²."), left,
               acceleration, shaperLabel(best.kind), formatPlain(best.accelerationLimit));
  }
  if (choice.withinLimit()) {
    return say(Text::tr("It leaves {0} % at best where {1} % may be left."), left, limit);
  }
  return say(Text::tr("It leaves {0} % and allows {1} mm/s²; {2} leaves {3} % and allows {4} mm/s²."), left,
             acceleration, shaperLabel(best.kind), percent(best.residual),
             formatPlain(best.accelerationLimit));
}

}  // namespace fettle
