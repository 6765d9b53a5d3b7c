#pragma once
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/json.h"
#include "core/measure/quantity.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/chart.h"
#include "core/steps/contract/finding.h"
#include "core/steps/contract/setting.h"

namespace fettle {

/// A result of a step: a quantity, or the reason why there is none.
struct ResultValue {
  std::string id;
  std::optional<Quantity> quantity;
  std::string unit;
  std::string why;
};

/// Everything a step has to say about its inputs. Made by the step, read by everybody else.
struct StepResult {
  std::string step;
  bool complete = true;
  std::vector<std::string> missing;  ///< paths of needed inputs that are blank
  std::vector<ResultValue> values;
  std::vector<std::pair<std::string, std::string>> texts;
  std::vector<SettingProposal> settings;
  SettingValues found;  ///< settings read off the controller; once accepted, as found for the other steps
  std::vector<Finding> findings;
  std::map<std::string, Verdict> verdicts;  ///< by the id of the quantity judged
  std::vector<Chart> charts;

  /// The worst of the verdicts.
  Verdict verdict() const;
  const ResultValue* find(const std::string& id) const;
  /// The quantity of that id, or null when it was not given.
  const Quantity* quantity(const std::string& id) const;

  /// A value that is not finite is kept as "could not be computed": no screen ever shows one.
  void give(std::string id, Quantity quantity);
  void give(std::string id, double value, std::string unit);
  void withhold(std::string id, std::string unit, std::string why);
  void say(std::string id, std::string text);
  void find(std::string code, Severity severity, std::string text, std::string see = {});
  void propose(std::string id, const SettingValue& asFound, const Quantity& quantity);
  void proposeWord(std::string id, const SettingValue& asFound, std::string word);
};

/// The form of files and of the headless program (see the schema in resources).
Json toJson(const StepResult& result);
StepResult resultFromJson(const Json& json);

}  // namespace fettle
