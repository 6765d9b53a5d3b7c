#pragma once
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// Says the ids of a step's results, settings and inputs as people do. The one place for it: files and the
/// headless program speak ids, screens and the report speak these words. What stands for the <names> of an
/// id is kept with the result; of an id that no result holds it is said by the choices of the step.
class Wording {
 public:
  /// @param result whose ids are said; may be null
  /// @param subject what the run is about, see subjectName(); named above the results, so left out of them
  explicit Wording(const Step& step, const StepResult* result = nullptr, std::string subject = {});

  /// What a text or a setting says, by its words: "two-hump EI" of "ei_two_hump".
  std::string text(const std::string& id, const std::string& text) const;
  /// A result or setting: its label, and in front of it what the <names> of its id stand for:
  /// "x, front, 1: Frequency of a mode".
  std::string label(const std::string& id) const;
  /// What the rest of an id is about, without its last part: "x, two-hump EI".
  std::string owner(const std::string& id) const;
  /// "Drag, row 2: Axis, Force" of the paths "drag[2].axis" and "drag[2].force_N".
  std::string paths(const std::vector<std::string>& paths) const;

  const Step& step() const { return m_step; }

 private:
  std::vector<std::string> namesOfId(const std::string& id, const std::string& pattern) const;

  const Step& m_step;
  std::string m_subject;
  std::map<std::string, std::vector<std::string>> m_names;  ///< by id
};

/// What a run is about: what its entry chose (see Step::subjectField), else the subject it was begun with.
std::string subjectOf(const Step& step, const Json& inputs, const std::string& ofRun);
/// The same as a title says it: "Hot end"; empty when the run is about the whole machine.
std::string subjectName(const Step& step, const Json& inputs, const std::string& ofRun);

/// Results whose ids differ only in what their <names> stand for, side by side: one row for each owner
/// ("x, ZV"), one column for each quantity.
struct ResultTable {
  struct Column {
    std::string label, unit;
  };
  /// A text for each owner; empty where an owner has none.
  struct Notes {
    std::string label;
    std::vector<std::string> texts;
  };
  std::vector<Column> columns;
  std::vector<std::string> owners;
  std::vector<std::vector<const ResultValue*>> rows;  ///< null where an owner has no such result
  std::vector<Notes> notes;
};

/// The results of a step as they are best read: single values first, texts, the others as tables.
struct ArrangedResults {
  std::vector<const ResultValue*> single;
  std::vector<std::pair<std::string, std::string>> texts;  ///< label and words
  std::vector<ResultTable> tables;
};
ArrangedResults arrangeResults(const Wording& wording, const StepResult& result);

}  // namespace fettle
