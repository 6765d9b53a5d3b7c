#include "core/measure/verdict.h"

#include <algorithm>

#include "core/maths/distributions.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

struct Bounds {
  double surelyLow, surelyHigh;      ///< inside the tolerance, these must be inside too
  double possiblyLow, possiblyHigh;  ///< outside only if these are outside too
};

Verdict decide(const Bounds& at, const Tolerance& tolerance) {
  const bool under = tolerance.low && at.possiblyHigh < *tolerance.low;
  const bool over = tolerance.high && at.possiblyLow > *tolerance.high;
  if (under || over) {
    return Verdict::fail;
  }
  const bool insideLow = !tolerance.low || at.surelyLow >= *tolerance.low;
  const bool insideHigh = !tolerance.high || at.surelyHigh <= *tolerance.high;
  return insideLow && insideHigh ? Verdict::pass : Verdict::undecided;
}

/// Not a thing to take in hand instead of another one.
bool isWayOfReading(const Instrument& instrument) {
  return instrument == instruments::alignmentByEye() || instrument == instruments::probeHeight();
}

}  // namespace

std::string verdictKey(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "pass";
    case Verdict::undecided:
      return "undecided";
    case Verdict::fail:
      return "fail";
    case Verdict::none:
      break;
  }
  return "none";
}

Verdict verdictFromKey(const std::string& key) {
  for (const auto verdict : {Verdict::pass, Verdict::undecided, Verdict::fail}) {
    if (verdictKey(verdict) == key) {
      return verdict;
    }
  }
  return Verdict::none;
}

std::string verdictWord(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return Text::tr("pass");
    case Verdict::undecided:
      return Text::tr("undecided");
    case Verdict::fail:
      return Text::tr("fail");
    case Verdict::none:
      break;
  }
  return Text::tr("no limit set");
}

Verdict worst(Verdict first, Verdict second) {
  return std::max(first, second);
}

Judgement judge(const Quantity& quantity, const Tolerance& tolerance) {
  Judgement judgement;
  if (!tolerance.named()) {
    return judgement;
  }
  Bounds at{quantity.value, quantity.value, quantity.value, quantity.value};
  if (quantity.u) {
    const double guard = *quantity.u == 0 ? 0 : maths::studentQuantile(0.95, quantity.dof) * *quantity.u;
    judgement.guardBand = guard;
    at = {quantity.value - guard, quantity.value + guard, quantity.value - guard, quantity.value + guard};
  } else if (quantity.low && quantity.high) {
    judgement.guardBand = (*quantity.high - *quantity.low) / 2;
    at = {*quantity.low, *quantity.high, *quantity.low, *quantity.high};
  }
  judgement.verdict = decide(at, tolerance);
  judgement.tooCoarse =
      tolerance.low && tolerance.high && 2 * judgement.guardBand >= *tolerance.high - *tolerance.low;
  return judgement;
}

std::optional<Instrument> instrumentThatWouldDo(double toleranceWidth, const std::string& unit) {
  std::optional<Instrument> best;
  for (const auto& candidate : instruments::bench()) {
    if (candidate.unit != unit || candidate.relativeError > 0 || isWayOfReading(candidate)) {
      continue;
    }
    const double guard = maths::normalQuantile(0.95) * candidate.standardUncertainty(0);
    if (2 * guard < toleranceWidth && (!best || candidate.e > best->e)) {
      best = candidate;
    }
  }
  return best;
}

}  // namespace fettle
