#include "core/steps/heater_control/published_rules.h"

#include <cmath>

#include "core/measure/text.h"

namespace fettle {
namespace {

maths::DeadTimeModel plantOf(const RuleParameters& p) {
  return {p[0], p[1], p[2]};
}

}  // namespace

maths::UltimatePoint ultimatePointFrom(const RuleParameters& p) {
  if (p.size() == 2) {
    return {p[0], p[1]};
  }
  return maths::ultimatePointOf(plantOf(p)).value_or(maths::UltimatePoint{std::nan(""), std::nan("")});
}

std::vector<PublishedRule> publishedRules(std::optional<double> pace) {
  const RuleFormula tyreusLuyben = [](const RuleParameters& p) {
    return maths::tyreusLuyben(ultimatePointFrom(p));
  };
  return {{"simc",
           Text::tr("SIMC"),
           [pace](const RuleParameters& p) { return maths::simcPi(plantOf(p), pace.value_or(p[2])); },
           {}},
          {"ziegler_nichols", Text::tr("Ziegler–Nichols"),
           [](const RuleParameters& p) { return maths::zieglerNichols(plantOf(p)); },
           [](const RuleParameters& p) { return maths::zieglerNichols(ultimatePointFrom(p)); }},
          {"tyreus_luyben", Text::tr("Tyreus–Luyben"), tyreusLuyben, tyreusLuyben},
          {"amigo",
           Text::tr("AMIGO"),
           [](const RuleParameters& p) { return maths::amigoPid(plantOf(p)); },
           {}}};
}

std::vector<Choice> ruleNames() {
  std::vector<Choice> names;
  for (const PublishedRule& rule : publishedRules({})) {
    names.push_back({rule.key, rule.name});
  }
  return names;
}

bool isUsable(const maths::PidSetting& pid) {
  return std::isfinite(pid.gain) && std::isfinite(pid.integralTime) && std::isfinite(pid.derivativeTime) &&
         pid.integralTime > 0;
}

}  // namespace fettle
