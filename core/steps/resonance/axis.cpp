#include "core/steps/resonance/axis.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/resonance/findings.h"
#include "core/steps/resonance/results.h"

namespace fettle {
namespace {

Quantity fitted(double value, double error, const std::string& unit, double dof) {
  Quantity quantity = plainQuantity(value, unit);
  quantity.u = error;
  quantity.dof = dof > 0 ? dof : infiniteDegreesOfFreedom;
  return quantity;
}

const ResonanceResults& key() {
  return keysOf<ResonanceResults>();
}

/// @param hz, damping the ids of mode k, counted from 1
template <typename HzOf, typename DampingOf>
void giveModes(const ModeSet& set, const HzOf& hz, const DampingOf& damping, StepResult& result) {
  for (std::size_t k = 1; k <= set.modes.size(); ++k) {
    const MeasuredMode& mode = set.modes[k - 1];
    result.give(hz(k), fitted(mode.frequency, mode.frequencyError, "Hz", set.dof));
    result.give(damping(k), mode.dampingError > 0 ? fitted(mode.damping, mode.dampingError, "1", set.dof)
                                                  : plainQuantity(mode.damping, "1"));
  }
}

/// A value proportional to a power of the shaper's frequency.
Quantity scaling(const Candidate& candidate, double value, const std::string& unit, double power) {
  Quantity quantity = plainQuantity(value, unit);
  if (candidate.relativeError) {
    quantity.u = std::abs(power) * value * candidate.relativeError->u;
    quantity.dof = candidate.relativeError->dof;
  }
  return quantity;
}

/// A shaper on an axis, as its ids are made from.
struct OnAxis {
  Name axis, shaper;
  template <typename Key>
  auto operator()(const Key& one) const {
    return one(axis, shaper);
  }
};

void giveBand(const OnAxis& at, const Candidate& candidate, StepResult& result) {
  const std::string why = Text::tr("this shaper leaves more than 5 % at its own frequency");
  if (!candidate.band) {
    result.withhold(at(key().bandLow), why);
    result.withhold(at(key().bandHigh), why);
    return;
  }
  result.give(at(key().bandLow), scaling(candidate, candidate.band->low, "Hz", 1));
  if (candidate.band->high) {
    result.give(at(key().bandHigh), scaling(candidate, *candidate.band->high, "Hz", 1));
  } else {
    result.withhold(at(key().bandHigh), Text::tr("the band has no upper end within reach"));
  }
}

void giveCandidate(const std::string& axis, const Candidate& candidate, const std::string& reason,
                   StepResult& result) {
  const OnAxis at{axis, std::string(maths::shaperKey(candidate.kind))};
  result.give(at(key().frequency), scaling(candidate, candidate.shaper.frequency, "Hz", 1));
  result.give(at(key().residual),
              fitted(candidate.residual, candidate.residualError.u, "1", candidate.residualError.dof));
  giveBand(at, candidate, result);
  result.give(at(key().duration), scaling(candidate, candidate.duration, "s", -1));
  result.give(at(key().sigma), scaling(candidate, candidate.sigma, "s", -1));
  result.give(at(key().accelerationLimit), scaling(candidate, candidate.accelerationLimit, "mm/s2", 2));
  result.give(at(key().cornerSpeedLimit), scaling(candidate, candidate.cornerSpeedLimit, "mm/s", 1));
  result.give(at(key().shaperReason), reason);
}

void propose(const std::string& axis, const Candidate& best, StepResult& result) {
  if (axis != "x" && axis != "y") {
    return;
  }
  result.propose(key().shaperSetting(axis), std::string(maths::shaperKey(best.kind)));
  result.propose(key().shaperHzSetting(axis), scaling(best, best.shaper.frequency, "Hz", 1));
  result.propose(key().accelerationSetting(axis), scaling(best, best.accelerationLimit, "mm/s2", 2));
}

void giveChoice(const AxisStudy& study, const ChoiceRules& rules, StepResult& result) {
  const ShaperChoice& choice = *study.choice;
  const std::string& axis = study.axis;
  giveModes(
      *study.deciding(), [&](std::size_t k) { return key().modeHz(axis, k); },
      [&](std::size_t k) { return key().modeDamping(axis, k); }, result);
  result.give(key().decidingPosition(axis), study.deciding()->position);
  for (std::size_t i = 0; i < choice.candidates.size(); ++i) {
    giveCandidate(axis, choice.candidates[i], reasonOf(choice, i, rules.residualLimit), result);
  }
  result.give(key().proposed(axis), std::string(maths::shaperKey(choice.best().kind)));
  result.give(key().reason(axis), reasonOf(choice, choice.proposed, rules.residualLimit));
  propose(axis, choice.best(), result);
}

/// What to record, so that something can be proposed for the axis.
void askForCapture(const std::string& axis, StepResult& result) {
  result.next.push_back(
      {"captures", 1,
       say(Text::tr("Record the axis {0} once more: excite it harder, fix the sensor firmly."), axis)});
}

/// Nothing is proposed: everything of the axis was refused, or no mode was found.
void withholdAxis(const AxisStudy& study, StepResult& result) {
  const bool isRefused = study.sets.empty() && study.refused;
  const std::string why =
      isRefused            ? study.refused->sentence
      : study.sets.empty() ? Text::tr("no capture of this axis has a mode to go by")
                           : Text::tr("the heaviest mode is damped so much that no shaper is made for it");
  const ResultId first = key().modeHz(study.axis, 1);
  for (const ResultId& id : {first, ResultId(key().modeDamping(study.axis, 1))}) {
    result.withhold(id, why);
    if (isRefused) {
      result.values.back().lacks.push_back(study.refused->at);
    }
  }
  if (isRefused) {
    return;
  }
  result.give(key().reason(study.axis), say(Text::tr("Nothing is proposed: {0}."), why));
  result.judge(first, {Verdict::undecided, 0}, {});
  askForCapture(study.axis, result);
}

}  // namespace

std::vector<AxisStudy> studyAxes(const std::vector<AnalysisPointer>& captures,
                                 const std::vector<Ripple>& ripples,
                                 const std::map<std::string, Refusal>& refused, const ChoiceRules& rules,
                                 WorkMemory& memory, const maths::Progress& progress) {
  std::vector<AxisStudy> studies;
  for (const char* axis : {"x", "y", "p", "q"}) {
    AxisStudy study;
    study.axis = axis;
    for (const AnalysisPointer& capture : captures) {
      if (capture->row.axis == axis) {
        study.captures.push_back(capture);
        if (capture->usable()) {
          study.sets.push_back(capture->modes);
        }
      }
    }
    const auto ripple =
        std::find_if(ripples.begin(), ripples.end(), [&](const Ripple& one) { return one.axis == axis; });
    study.ripple = ripple == ripples.end() ? nullptr : &*ripple;
    if (study.ripple && study.sets.empty()) {
      study.restsOnRipple = true;
      study.sets.push_back(study.ripple->asModes(rules.designDamping));
    }
    if (!study.sets.empty()) {
      const SearchTerms terms = termsOf(study.sets, rules);
      const auto found = memory.recall<ShaperChoice>(terms, [&] { return searchShapers(terms, progress); });
      study.choice = proposeShaper(*found, rules.deviation);
    }
    if (const auto one = refused.find(axis); one != refused.end()) {
      study.refused = one->second;
    }
    if (!study.captures.empty() || study.ripple || study.refused) {
      studies.push_back(std::move(study));
    }
  }
  return studies;
}

void giveCapture(const CaptureAnalysis& capture, StepResult& result) {
  const std::string& axis = capture.row.axis;
  const Name position(capture.modes.position, capture.row.position);
  if (capture.modes.modes.empty()) {
    result.withhold(key().positionModeHz(axis, position, 1), capture.whyNoMode);
    result.withhold(key().positionModeDamping(axis, position, 1), capture.whyNoMode);
  } else {
    giveModes(
        capture.modes, [&](std::size_t k) { return key().positionModeHz(axis, position, k); },
        [&](std::size_t k) { return key().positionModeDamping(axis, position, k); }, result);
  }
  const std::size_t before = result.findings.size();
  findInCapture(capture, result);
  for (std::size_t i = before; i < result.findings.size(); ++i) {
    result.findings[i].at = fmt::format("captures[{}]", capture.row.number);
  }
}

void giveAxis(const AxisStudy& study, const ChoiceRules& rules, const StepContext& context,
              StepResult& result) {
  if (study.ripple) {
    result.give(key().rippleHz(study.axis), study.ripple->frequency);
    findInRipple(study, context, result);
  }
  if (study.choice) {
    giveChoice(study, rules, result);
    findInChoice(study, rules, result);
  } else {
    withholdAxis(study, result);
  }
}

}  // namespace fettle
