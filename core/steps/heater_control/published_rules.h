#pragma once
#include <Eigen/Core>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field.h"
#include "core/maths/dead_time_model.h"
#include "core/maths/pid_rules.h"

namespace fettle {

/// What a rule computes from: (gain, time constant, dead time) of a model, or (Ku, Pu).
using RuleParameters = Eigen::VectorXd;
using RuleFormula = std::function<maths::PidSetting(const RuleParameters&)>;

/// A published rule: its setting from a model and from an ultimate point; empty where it has none.
struct PublishedRule {
  std::string key;   ///< "simc"
  std::string name;  ///< "SIMC"
  RuleFormula fromModel, fromPoint;
};

/// @param pace time constant wanted of the closed loop, for SIMC; blank: the dead time
std::vector<PublishedRule> publishedRules(std::optional<double> pace);

/// The rules with their names for people: "Ziegler–Nichols".
std::vector<Choice> ruleNames();

/// The ultimate point itself, or that of a model; not finite where there is none, as the formulas are.
maths::UltimatePoint ultimatePointFrom(const RuleParameters& parameters);

/// Whether a rule has a setting: all parts finite, with an integral.
bool isUsable(const maths::PidSetting& pid);

}  // namespace fettle
