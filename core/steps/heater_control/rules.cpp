#include "core/steps/heater_control/rules.h"

#include <algorithm>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/heater_control/log.h"

namespace fettle {
namespace {

using Parameters = Eigen::VectorXd;
using Setting = std::function<maths::PidSetting(const Parameters&)>;
using Formula = std::function<double(const Parameters&)>;

/// A published rule: its setting from a model and from an ultimate point; empty where it has none.
struct Rule {
  std::string key, name;
  Setting fromModel, fromPoint;
};

maths::DeadTimeModel plantOf(const Parameters& p) {
  return {p[0], p[1], p[2]};
}

/// Not finite where there is none, as the formulas of the rules are.
maths::UltimatePoint pointOf(const Parameters& p) {
  if (p.size() == 2) {
    return {p[0], p[1]};
  }
  return maths::ultimatePointOf(plantOf(p)).value_or(maths::UltimatePoint{std::nan(""), std::nan("")});
}

/// @param pace time constant wanted of the closed loop, for SIMC; blank: the dead time
std::vector<Rule> allRules(std::optional<double> pace) {
  const Setting tyreusLuyben = [](const Parameters& p) { return maths::tyreusLuyben(pointOf(p)); };
  return {
      {"simc",
       Text::tr("SIMC"),
       [pace](const Parameters& p) { return maths::simcPi(plantOf(p), pace.value_or(p[2])); },
       {}},
      {"ziegler_nichols", Text::tr("Ziegler–Nichols"),
       [](const Parameters& p) { return maths::zieglerNichols(plantOf(p)); },
       [](const Parameters& p) { return maths::zieglerNichols(pointOf(p)); }},
      {"tyreus_luyben", Text::tr("Tyreus–Luyben"), tyreusLuyben, tyreusLuyben},
      {"amigo", Text::tr("AMIGO"), [](const Parameters& p) { return maths::amigoPid(plantOf(p)); }, {}}};
}

/// A derived value with the uncertainty of its parameters by partial derivatives.
Quantity derived(const Formula& formula, const Parameters& at, const HeaterModel& model, const char* unit) {
  constexpr double relativeStep = 1e-5;
  Quantity quantity = plainQuantity(formula(at), unit);
  if (model.covariance.size() == 0) {
    return quantity;
  }
  Eigen::VectorXd slope(at.size());
  for (Eigen::Index i = 0; i < at.size(); ++i) {
    Parameters above = at;
    Parameters below = at;
    above[i] *= 1 + relativeStep;
    below[i] *= 1 - relativeStep;
    slope[i] = at[i] != 0 ? (formula(above) - formula(below)) / (above[i] - below[i]) : 0;
  }
  quantity.u = std::sqrt(std::max(slope.dot(model.covariance * slope), 0.0));
  quantity.dof = model.dof;
  return quantity;
}

/// Factors that turn the parallel gains into those of a controller with this full scale and period.
struct Form {
  const char* ending;
  double proportional, integral, derivative;
};

std::vector<Form> formsOf(const HeaterControlInputs& inputs) {
  std::vector<Form> forms{{"", 1, 1, 1}};
  const double scale = inputs.outputFullScale.value_or(1);
  if (inputs.outputFullScale) {
    forms.push_back({"_at_full_scale", scale, scale, scale});
  }
  if (inputs.period) {
    forms.push_back({"_per_sample", scale, scale * *inputs.period, scale / *inputs.period});
  }
  return forms;
}

using Part = double (*)(const maths::PidSetting&);

struct Named {
  std::string name;
  Part part;
  double factor;
  const char* unit;
};

std::vector<Named> resultsOf(const HeaterControlInputs& inputs) {
  const Part gain = [](const maths::PidSetting& pid) { return pid.gain; };
  const Part integral = [](const maths::PidSetting& pid) { return pid.integralGain(); };
  const Part derivative = [](const maths::PidSetting& pid) { return pid.derivativeGain(); };
  std::vector<Named> all{{"Kc", gain, 1, "1"},
                         {"Ti_s", [](const maths::PidSetting& pid) { return pid.integralTime; }, 1, "s"},
                         {"Td_s", [](const maths::PidSetting& pid) { return pid.derivativeTime; }, 1, "s"}};
  for (const Form& form : formsOf(inputs)) {
    all.push_back({std::string("Kp") + form.ending, gain, form.proportional, "1"});
    all.push_back({std::string("Ki") + form.ending, integral, form.integral, "1"});
    all.push_back({std::string("Kd") + form.ending, derivative, form.derivative, "1"});
  }
  return all;
}

void giveOwnUltimatePoint(StepResult& result, const std::string& heater, const Parameters& at,
                          const HeaterModel& model) {
  if (!std::isfinite(pointOf(at).gain)) {
    const std::string why = Text::tr("a heater without dead time has no ultimate point");
    result.withhold(idOf(heater, "Ku"), "1", why);
    result.withhold(idOf(heater, "Pu"), "s", why);
    return;
  }
  result.give(idOf(heater, "Ku"),
              derived([](const Parameters& p) { return pointOf(p).gain; }, at, model, "1"));
  result.give(idOf(heater, "Pu"),
              derived([](const Parameters& p) { return pointOf(p).period; }, at, model, "s"));
}

bool isFinite(const maths::PidSetting& pid) {
  return std::isfinite(pid.gain) && std::isfinite(pid.integralTime) && std::isfinite(pid.derivativeTime) &&
         pid.integralTime > 0;
}

Parameters parametersOf(const HeaterModel& model) {
  if (model.plant) {
    return Eigen::Vector3d(model.plant->gain, model.plant->timeConstant, model.plant->deadTime);
  }
  return Eigen::Vector2d(model.point->gain, model.point->period);
}

}  // namespace

std::vector<Choice> ruleNames() {
  std::vector<Choice> names;
  for (const Rule& rule : allRules({})) {
    names.push_back({rule.key, rule.name});
  }
  return names;
}

std::vector<RuleSetting> giveRules(StepResult& result, const HeaterControlInputs& inputs,
                                   const std::string& heater, const HeaterModel& model) {
  const Parameters at = parametersOf(model);
  if (model.plant) {
    giveOwnUltimatePoint(result, heater, at, model);
  }
  std::vector<RuleSetting> settings;
  for (const Rule& rule : allRules(inputs.closedLoopTime)) {
    const Setting& settingOf = model.plant ? rule.fromModel : rule.fromPoint;
    if (!settingOf) {
      continue;
    }
    RuleSetting setting{rule.key, rule.name, settingOf(at), {}};
    for (const Named& named : resultsOf(inputs)) {
      const std::string id = idOf(heater, rule.key + "." + named.name);
      if (!isFinite(setting.pid)) {
        result.withhold(id, named.unit, Text::tr("without a dead time this rule has no setting"));
        continue;
      }
      const auto formula = [&](const Parameters& p) { return named.factor * named.part(settingOf(p)); };
      const Quantity quantity = derived(formula, at, model, named.unit);
      result.give(id, quantity);
      setting.quantities[named.name] = quantity;
    }
    if (isFinite(setting.pid)) {
      settings.push_back(std::move(setting));
    }
  }
  return settings;
}

}  // namespace fettle
