#pragma once
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/maths/residual_vibration.h"
#include "core/maths/shaper.h"
#include "core/maths/spectrum.h"
#include "core/measure/uncertainty.h"
#include "core/steps/resonance/measured_mode.h"

namespace fettle {

struct ChoiceRules {
  double allowance = 0.05;      ///< how far a mode may move, as a share of its frequency
  double residualLimit = 0.05;  ///< of the vibration that may be left
  double designDamping = 0.05;  ///< where no mode tells it
  double deviation = 0.1;       ///< mm, of a shaped path from the path meant
};

/// One kind of shaper at the best frequency for an axis.
struct Candidate {
  maths::ShaperKind kind = maths::ShaperKind::zv;
  maths::ShaperShape shape;
  maths::Shaper shaper;  ///< the shape at the frequency found
  double residual = 0;
  Contribution residualError;
  /// u(frequency)/frequency; none where the data do not tell. Times and limits of the shaper scale with it.
  std::optional<Contribution> relativeError;
  std::size_t decidingSet = 0;  ///< of the mode sets, the one with that residual
  std::optional<maths::InsensitiveBand> band;
  double duration = 0;           ///< s
  double sigma = 0;              ///< s
  double accelerationLimit = 0;  ///< mm/s²
  double cornerSpeedLimit = 0;   ///< mm/s
  bool withinLimit = false;
};

struct ShaperChoice {
  double damping = 0;                 ///< that the shapers are made for
  double lowest = 0, highest = 0;     ///< Hz, that were tried
  std::vector<Candidate> candidates;  ///< in the order of shaperKinds, without those that do not exist
  std::size_t proposed = 0;           ///< of the candidates
  bool withinLimit() const { return candidates[proposed].withinLimit; }
  const Candidate& best() const { return candidates[proposed]; }
};

/// Residual vibration √(Σ(w_k V_k)²/Σ w_k²) over the modes of a set; V_k is the largest of V(f, ζ_k) at 41
/// equally spaced f within f_k·(1 ± allowance), ends included (V by Singer and Seering 1990).
double residualOf(const ModeSet& set, const maths::Shaper& shaper, double allowance);

/// The largest residual over the sets, and the set that has it.
struct WorstResidual {
  double value = 0;
  std::size_t set = 0;
};
WorstResidual worstResidual(std::span<const ModeSet> sets, const maths::Shaper& shaper, double allowance);

/// What the search for a shaper depends on; the path deviation only sets limits afterwards.
struct SearchTerms {
  std::vector<ModeSet> sets;
  double allowance = 0, residualLimit = 0;
  friend bool operator==(const SearchTerms&, const SearchTerms&) = default;
};

/// Those over these sets under these rules.
SearchTerms termsOf(const std::vector<ModeSet>& sets, const ChoiceRules& rules);

/// For each kind of shaper the highest multiple of 0.1 Hz from 0.7 × the lowest to 1.5 × the highest mode
/// whose worst residual over the sets is within the limit; if none is, the one with the least. Design
/// damping: that of the mode with the greatest weight over all sets.
/// The sets hold one mode at least, all with 0 < ζ ≤ 0.5 at the greatest weight; otherwise no candidate is
/// made and the list is empty. Throws Cancelled when `progress` says so.
ShaperChoice searchShapers(const SearchTerms& terms, const maths::Progress& progress = {});

/// Gives the candidates found their limits for a path deviation in mm, and proposes the highest
/// acceleration limit among those within the residual limit; if none is, among those within 1.25 × the
/// least residual. Nothing without a candidate.
std::optional<ShaperChoice> proposeShaper(ShaperChoice found, double deviation);

/// Word of a shaper on screens: "ZVD", "two-hump EI".
std::string shaperLabel(maths::ShaperKind kind);

/// Why this candidate is proposed or is not: one sentence with its numbers.
std::string reasonOf(const ShaperChoice& choice, std::size_t candidate, double residualLimit);

}  // namespace fettle
