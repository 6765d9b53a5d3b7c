#include "core/steps/resonance/axis.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/resonance/findings.h"

namespace fettle {
namespace {

Quantity fitted(double value, double error, const std::string& unit, double dof) {
  Quantity quantity = plainQuantity(value, unit);
  quantity.u = error;
  quantity.dof = dof > 0 ? dof : infiniteDegreesOfFreedom;
  return quantity;
}

void giveModes(const std::string& prefix, const ModeSet& set, StepResult& result) {
  for (std::size_t k = 0; k < set.modes.size(); ++k) {
    const MeasuredMode& mode = set.modes[k];
    const std::string id = prefix + ".mode_" + std::to_string(k + 1);
    result.give(id + "_hz", fitted(mode.frequency, mode.frequencyError, "Hz", set.dof));
    result.give(id + "_damping", mode.dampingError > 0
                                     ? fitted(mode.damping, mode.dampingError, "1", set.dof)
                                     : plainQuantity(mode.damping, "1"));
  }
}

void withholdModes(const std::string& prefix, const std::string& why, StepResult& result) {
  result.withhold(prefix + ".mode_1_hz", "Hz", why);
  result.withhold(prefix + ".mode_1_damping", "1", why);
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

void giveBand(const std::string& prefix, const Candidate& candidate, StepResult& result) {
  const std::string why = Text::tr("this shaper leaves more than 5 % at its own frequency");
  if (!candidate.band) {
    result.withhold(prefix + "band_low_hz", "Hz", why);
    result.withhold(prefix + "band_high_hz", "Hz", why);
    return;
  }
  result.give(prefix + "band_low_hz", scaling(candidate, candidate.band->low, "Hz", 1));
  if (candidate.band->high) {
    result.give(prefix + "band_high_hz", scaling(candidate, *candidate.band->high, "Hz", 1));
  } else {
    result.withhold(prefix + "band_high_hz", "Hz", Text::tr("the band has no upper end within reach"));
  }
}

void giveCandidate(const std::string& axis, const Candidate& candidate, const std::string& reason,
                   StepResult& result) {
  const std::string prefix = axis + "." + std::string(maths::shaperKey(candidate.kind)) + ".";
  result.give(prefix + "frequency_hz", scaling(candidate, candidate.shaper.frequency, "Hz", 1));
  result.give(prefix + "residual",
              fitted(candidate.residual, candidate.residualError.u, "1", candidate.residualError.dof));
  giveBand(prefix, candidate, result);
  result.give(prefix + "duration_s", scaling(candidate, candidate.duration, "s", -1));
  result.give(prefix + "sigma_s", scaling(candidate, candidate.sigma, "s", -1));
  result.give(prefix + "acceleration_limit", scaling(candidate, candidate.accelerationLimit, "mm/s2", 2));
  result.give(prefix + "corner_speed_limit", scaling(candidate, candidate.cornerSpeedLimit, "mm/s", 1));
  result.say(prefix + "reason", reason);
}

void propose(const std::string& axis, const Candidate& best, const StepContext& context,
             StepResult& result) {
  if (axis != "x" && axis != "y") {
    return;
  }
  const std::string shaper = axis + ".shaper";
  const std::string acceleration = axis + ".acceleration";
  result.proposeWord(shaper, context.asFoundValue(shaper), std::string(maths::shaperKey(best.kind)));
  result.propose(shaper + "_hz", context.asFoundValue(shaper + "_hz"),
                 scaling(best, best.shaper.frequency, "Hz", 1));
  result.propose(acceleration, context.asFoundValue(acceleration),
                 scaling(best, best.accelerationLimit, "mm/s2", 2));
}

void giveChoice(const AxisStudy& study, const ChoiceRules& rules, const StepContext& context,
                StepResult& result) {
  const ShaperChoice& choice = *study.choice;
  giveModes(study.axis, *study.deciding(), result);
  result.say(study.axis + ".deciding_position", study.deciding()->position);
  for (std::size_t i = 0; i < choice.candidates.size(); ++i) {
    giveCandidate(study.axis, choice.candidates[i], reasonOf(choice, i, rules.residualLimit), result);
  }
  result.say(study.axis + ".recommended", std::string(maths::shaperKey(choice.best().kind)));
  result.say(study.axis + ".reason", reasonOf(choice, choice.recommended, rules.residualLimit));
  propose(study.axis, choice.best(), context, result);
}

}  // namespace

std::vector<AxisStudy> studyAxes(const std::vector<AnalysisPointer>& captures,
                                 const std::vector<Ripple>& ripples, const ChoiceRules& rules,
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
      study.choice = recommendShaper(*found, rules.deviation);
    }
    if (!study.captures.empty() || study.ripple) {
      studies.push_back(std::move(study));
    }
  }
  return studies;
}

void giveCapture(const CaptureAnalysis& capture, StepResult& result) {
  if (capture.modes.modes.empty()) {
    withholdModes(capture.id, capture.whyNoMode, result);
  } else {
    giveModes(capture.id, capture.modes, result);
  }
  findInCapture(capture, result);
}

void giveAxis(const AxisStudy& study, const ChoiceRules& rules, const StepContext& context,
              StepResult& result) {
  if (study.ripple) {
    result.give(study.axis + ".ripple_hz", study.ripple->frequency);
    findInRipple(study, context, result);
  }
  if (study.choice) {
    giveChoice(study, rules, context, result);
    findInChoice(study, rules, result);
    return;
  }
  const std::string why =
      study.sets.empty() ? Text::tr("no capture of this axis has a mode to go by")
                         : Text::tr("the heaviest mode is damped so much that no shaper is made for it");
  withholdModes(study.axis, why, result);
  result.say(study.axis + ".reason", say(Text::tr("Nothing is proposed: {0}."), why));
  result.judgements.push_back({study.axis + ".mode_1_hz", Verdict::undecided, {}, 0});
}

}  // namespace fettle
