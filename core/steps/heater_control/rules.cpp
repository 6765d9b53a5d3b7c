#include "core/steps/heater_control/rules.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/heater_control/entries.h"
#include "core/steps/heater_control/published_rules.h"
#include "core/steps/heater_control/results.h"

namespace fettle {
namespace {

using Formula = std::function<double(const RuleParameters&)>;
using Part = double (*)(const maths::PidSetting&);

/// A derived value with the uncertainty of its parameters by partial derivatives.
Quantity derived(const Formula& formula, const RuleParameters& at, const HeaterModel& model,
                 const std::string& unit) {
  constexpr double relativeStep = 1e-5;
  Quantity quantity = plainQuantity(formula(at), unit);
  if (model.covariance.size() == 0) {
    return quantity;
  }
  Eigen::VectorXd slope(at.size());
  for (Eigen::Index i = 0; i < at.size(); ++i) {
    RuleParameters above = at;
    RuleParameters below = at;
    above[i] *= 1 + relativeStep;
    below[i] *= 1 - relativeStep;
    slope[i] = at[i] != 0 ? (formula(above) - formula(below)) / (above[i] - below[i]) : 0;
  }
  quantity.u = std::sqrt(std::max(slope.dot(model.covariance * slope), 0.0));
  quantity.dof = model.dof;
  return quantity;
}

constexpr Part gainPart = [](const maths::PidSetting& pid) { return pid.gain; };
constexpr Part integralTimePart = [](const maths::PidSetting& pid) { return pid.integralTime; };
constexpr Part derivativeTimePart = [](const maths::PidSetting& pid) { return pid.derivativeTime; };
constexpr Part integralPart = [](const maths::PidSetting& pid) { return pid.integralGain(); };
constexpr Part derivativePart = [](const maths::PidSetting& pid) { return pid.derivativeGain(); };

/// One result of a rule: part of its setting times a factor.
struct PartOfRule {
  ResultId id;
  Part part;
  double factor;
};

/// The gains in one form of the controller.
std::vector<PartOfRule> gains(const ResultId& proportional, const ResultId& integral,
                              const ResultId& derivative, const std::array<double, 3>& factors) {
  return {{proportional, gainPart, factors[0]},
          {integral, integralPart, factors[1]},
          {derivative, derivativePart, factors[2]}};
}

std::vector<PartOfRule> idealAndParallel(const std::string& heater, const Name& rule) {
  const auto& key = keysOf<HeaterControlResults>();
  std::vector<PartOfRule> parts{{key.idealGain(heater, rule), gainPart, 1},
                                {key.integralTime(heater, rule), integralTimePart, 1},
                                {key.derivativeTime(heater, rule), derivativeTimePart, 1}};
  for (auto& gain : gains(key.proportional(heater, rule), key.integral(heater, rule),
                          key.derivative(heater, rule), {1, 1, 1})) {
    parts.push_back(std::move(gain));
  }
  return parts;
}

std::vector<PartOfRule> atFullScale(const std::string& heater, const Name& rule, double scale) {
  const auto& key = keysOf<HeaterControlResults>();
  return gains(key.proportionalAtFullScale(heater, rule), key.integralAtFullScale(heater, rule),
               key.derivativeAtFullScale(heater, rule), {scale, scale, scale});
}

std::vector<PartOfRule> perSample(const std::string& heater, const Name& rule, double scale,
                                  double period) {
  const auto& key = keysOf<HeaterControlResults>();
  return gains(key.proportionalPerSample(heater, rule), key.integralPerSample(heater, rule),
               key.derivativePerSample(heater, rule), {scale, scale * period, scale / period});
}

std::vector<ResultId> idsOf(const std::vector<PartOfRule>& parts) {
  std::vector<ResultId> ids;
  for (const PartOfRule& part : parts) {
    ids.push_back(part.id);
  }
  return ids;
}

/// What the rules are computed from, and where to.
struct RuleWork {
  StepResult& result;
  const HeaterControlInputs& inputs;
  const std::string& heater;
  const HeaterModel& model;
  RuleParameters at;
};

/// Gives parts of one rule, of which the last three are gains, or says why not.
std::optional<ControllerGains> giveParts(const RuleWork& work, const RuleFormula& settingOf,
                                         const std::vector<PartOfRule>& parts,
                                         const std::vector<NeededEntry>& entries) {
  if (!areEntered(work.result, idsOf(parts), entries)) {
    return std::nullopt;
  }
  std::vector<Quantity> given;
  const bool usable = isUsable(settingOf(work.at));
  for (const PartOfRule& part : parts) {
    if (!usable) {
      work.result.withhold(part.id, Text::tr("without a dead time this rule has no setting"));
      continue;
    }
    const auto formula = [&](const RuleParameters& p) { return part.factor * part.part(settingOf(p)); };
    given.push_back(derived(formula, work.at, work.model, part.id.unit));
    work.result.give(part.id, given.back());
  }
  const auto last = given.end();
  return usable ? std::optional(ControllerGains{last[-3], last[-2], last[-1]}) : std::nullopt;
}

/// Every result of one rule; nothing where it has no setting.
std::optional<RuleSetting> giveRule(const RuleWork& work, const PublishedRule& rule,
                                    const RuleFormula& settingOf) {
  const Name name(rule.key, rule.name);
  std::vector<NeededEntry> entries;
  if (rule.key == "simc" && work.inputs.closedLoopTime) {
    entries.push_back({"tau_c_s", work.inputs.closedLoopTime});
  }
  auto ofController = giveParts(work, settingOf, idealAndParallel(work.heater, name), entries);
  if (work.inputs.outputFullScale) {
    entries.push_back({"output_full_scale", work.inputs.outputFullScale});
    ofController =
        giveParts(work, settingOf, atFullScale(work.heater, name, *work.inputs.outputFullScale), entries);
  }
  if (work.inputs.period) {
    const double scale = work.inputs.outputFullScale.value_or(1);
    auto ofSamples = entries;
    ofSamples.push_back({"period_s", work.inputs.period});
    giveParts(work, settingOf, perSample(work.heater, name, scale, *work.inputs.period), ofSamples);
  }
  const maths::PidSetting pid = settingOf(work.at);
  if (!isUsable(pid)) {
    return std::nullopt;
  }
  return RuleSetting{rule.key, rule.name, pid, std::move(ofController)};
}

void giveOwnUltimatePoint(const RuleWork& work) {
  const auto& key = keysOf<HeaterControlResults>();
  const ResultId gain = key.ultimateGain(work.heater);
  const ResultId period = key.ultimatePeriod(work.heater);
  if (!std::isfinite(ultimatePointFrom(work.at).gain)) {
    const std::string why = Text::tr("a heater without dead time has no ultimate point");
    work.result.withhold(gain, why);
    work.result.withhold(period, why);
    return;
  }
  work.result.give(gain, derived([](const RuleParameters& p) { return ultimatePointFrom(p).gain; }, work.at,
                                 work.model, gain.unit));
  work.result.give(period, derived([](const RuleParameters& p) { return ultimatePointFrom(p).period; },
                                   work.at, work.model, period.unit));
}

RuleParameters parametersOf(const HeaterModel& model) {
  if (model.plant) {
    return Eigen::Vector3d(model.plant->gain, model.plant->timeConstant, model.plant->deadTime);
  }
  return Eigen::Vector2d(model.point->gain, model.point->period);
}

}  // namespace

std::vector<RuleSetting> giveRules(StepResult& result, const HeaterControlInputs& inputs,
                                   const std::string& heater, const HeaterModel& model) {
  const RuleWork work{result, inputs, heater, model, parametersOf(model)};
  if (model.plant) {
    giveOwnUltimatePoint(work);
  }
  std::vector<RuleSetting> settings;
  for (const PublishedRule& rule : publishedRules(inputs.closedLoopTime)) {
    const RuleFormula& settingOf = model.plant ? rule.fromModel : rule.fromPoint;
    if (!settingOf) {
      continue;
    }
    if (auto setting = giveRule(work, rule, settingOf)) {
      settings.push_back(std::move(*setting));
    }
  }
  return settings;
}

}  // namespace fettle
