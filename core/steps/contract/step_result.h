#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/json.h"
#include "core/measure/quantity.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/chart.h"
#include "core/steps/contract/finding.h"
#include "core/steps/contract/result_key.h"
#include "core/steps/contract/setting.h"

namespace fettle {

/// A result of a step: a quantity, or the reason why there is none.
struct ResultValue {
  std::string id;
  std::optional<Quantity> quantity;
  std::string unit;
  std::string why;
  std::vector<std::string> lacks;  ///< paths of the inputs it waits for, blank or refused
  std::vector<std::string> names;  ///< labels of what stands for the <names> of the id
};

struct ResultText {
  std::string id;
  std::string text;
  std::vector<std::string> names;
};

/// A quantity held against its limit.
struct Judged {
  std::string id;
  Verdict verdict = Verdict::none;
  Tolerance limit;
  double guard = 0;  ///< in the quantity's unit

  friend bool operator==(const Judged&, const Judged&) = default;
};

/// What to enter or to measure next, and why.
struct NextReading {
  std::string field;         ///< path: "moves", "points[2].reference_C"
  std::optional<int> count;  ///< how many; none: as many as the field takes
  std::string text;          ///< one sentence

  friend bool operator==(const NextReading&, const NextReading&) = default;
};

/// Thrown by a step for readings that are numbers but cannot be used: contradictory rows, fewer points than
/// the model has parameters, all x equal. The sentence names field or row, value, and what would be
/// accepted. See StepResult::attempt for how far it reaches.
struct Refusal {
  std::string sentence;
  std::string at = {};  ///< path of the field or row
};

/// Everything a step has to say about its inputs. Made by the step, read by everybody else.
struct StepResult {
  std::string step;
  bool complete = true;              ///< nothing the headline results need is blank or refused
  std::vector<std::string> missing;  ///< paths of needed inputs that are blank
  std::vector<ResultValue> values;
  std::vector<ResultText> texts;
  std::vector<SettingProposal> settings;
  SettingValues found;  ///< settings read off the controller; once accepted, as found for the other steps
  std::vector<Finding> findings;
  std::vector<Judged> judgements;
  std::vector<NextReading> next;
  std::vector<Chart> charts;

  /// The worst of the verdicts.
  Verdict verdict() const;
  const ResultValue* find(const std::string& id) const;
  /// The quantity of that id, or null when it was not given.
  const Quantity* quantity(const std::string& id) const;
  /// The judgement of that quantity, or null.
  const Judged* judgement(const std::string& id) const;

  /// A value that is not finite is kept as "could not be computed": no screen ever shows one. Throws
  /// std::logic_error when the unit is not the one described.
  void give(const ResultId& id, Quantity quantity);
  void give(const ResultId& id, double value);
  void give(const TextId& id, std::string text);
  void withhold(const ResultId& id, std::string why);
  /// Withholds a result until these inputs are there; their paths are added to `missing`.
  void wantFor(const ResultId& id, const std::vector<std::string>& paths);
  /// Inputs that are wanted although no single result waits for them.
  void want(const std::vector<std::string>& paths);
  void judge(const ResultId& id, const Judgement& judgement, const Tolerance& limit);
  void addFinding(std::string code, Severity severity, std::string text, std::string see = {},
                  std::string at = {});
  void propose(const SettingId& id, const Quantity& quantity);
  void propose(const SettingId& id, std::string word);

  /// Runs a part of a step. A Refusal in it becomes a finding `refused` and withholds these results; what
  /// the part gave before stays, and so does what the rest of the step gives; the step is not complete.
  /// @return false after a Refusal
  bool attempt(const std::vector<ResultId>& ids, const std::function<void()>& part);
  void refuse(const Refusal& refusal);
};

/// The form of files and of the headless program (see the schema in resources).
Json toJson(const StepResult& result);
StepResult resultFromJson(const Json& json);
/// The findings of a result in that form.
std::vector<Finding> findingsFromJson(const Json& result);

}  // namespace fettle
