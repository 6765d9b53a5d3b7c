#pragma once
#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/field_list.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

enum class Stage { makeSafe, heat, motion, bed, plastic, limitsAndProof };

/// The heading of a stage in the step list.
std::string stageName(Stage stage);

/// A result a step can give. The id may hold <names>: "<axis>.<position>.mode_<k>_hz".
struct ResultDescription {
  std::string id;
  std::string unit;  ///< unit key; empty: a text
  std::string label;
  Tolerance tolerance = {};  ///< default; the user may change it per machine
  bool judged = false;       ///< carries a verdict, so a tolerance may be set
};

/// Thrown by a step's evaluate() for readings that are numbers but cannot be used: contradictory rows,
/// fewer points than the model has parameters, all x equal. The sentence names field or row, value, and
/// what would be accepted; the evaluation returns it as its error.
struct Refusal {
  std::string sentence;
};

/// One step of the bench. To add one:
///  1. write its pair core/steps/<key>.h/.cpp: an inputs struct with describe(FieldList&), an
///     `StepResult evaluate(const Inputs&, const StepContext&)` and a function that returns its Step;
///     parts that are worth a file of their own go to the folder core/steps/<key>/;
///  2. add one line to catalogue.cpp;
///  3. write its text resources/steps/<key>.md;
///  4. write its tests.
/// Form, checks, storage, exchange, undo, headless program and report follow from these.
struct Step {
  std::string key;      ///< "probe-position"
  std::string name;     ///< "Probe position"
  std::string purpose;  ///< one sentence under the title
  Stage stage = Stage::makeSafe;
  std::string subjectField;  ///< key of the choice that says what a run is about; empty: the machine
  bool heats = false, moves = false;
  std::string caution;                ///< shown above the entry; empty for none
  std::vector<std::string> headline;  ///< ids (patterns) of the values shown in the step list
  std::vector<ResultDescription> results;
  std::vector<SettingDescription> settings;  ///< proposed, or read as found
  std::vector<std::string> reads;            ///< accepted results of other steps: "<step>.<result id>"
  std::vector<Choice> names;  ///< what parts of result ids are called, beyond the choices of fields
  std::vector<Field> fields;
  std::vector<Chart> emptyCharts;  ///< shown while inputs are incomplete and draw nothing yet
  /// Reads inputs, evaluates, and says in one sentence what cannot be accepted.
  std::function<tl::expected<StepResult, std::string>(const Json& inputs, StepContext context,
                                                      InputFiles& files)>
      evaluate;

  /// The description of a result id, or null.
  const ResultDescription* describe(const std::string& resultId) const;
};

/// The tolerance of a result: the user's, else the default of its description.
Tolerance toleranceOf(const Step& step, const StepContext& context, const std::string& resultId);

namespace detail {
/// The part of an evaluation that does not depend on the inputs' type. `run` describes, reads and
/// evaluates: it returns an empty result when the reader misses something.
tl::expected<StepResult, std::string> evaluateInputs(
    const Step& step, const Json& inputs, StepContext context, InputFiles& files,
    const std::function<StepResult(const Json&, const StepContext&, FieldReader&)>& run);
}  // namespace detail

/// What `instrument-too-coarse` says first: guard bands and tolerance, in a unit key.
std::string guardBandsFill(const std::string& what, const std::string& unit, const Judgement& judgement,
                           double width);
/// The same and the instrument of the bench list that would do. `used`, when given, is what was read with:
/// only a finer one is named.
std::string tooCoarseSentence(const std::string& what, const std::string& unit, const Judgement& judgement,
                              double width, const Instrument* used = nullptr);

/// Judges results by their tolerances; adds `instrument-too-coarse` where the guard bands leave no room.
void judgeResults(const Step& step, const StepContext& context, StepResult& result);

/// Completes a Step with what follows from its inputs type: fields and the evaluation.
template <typename Inputs>
Step withInputs(Step step, StepResult (*evaluate)(const Inputs&, const StepContext&)) {
  step.fields = describedFields<Inputs>();
  // NOLINTNEXTLINE(performance-unnecessary-value-param): the context is moved on
  step.evaluate = [step, evaluate](const Json& json, StepContext context, InputFiles& files) {
    return detail::evaluateInputs(step, json, std::move(context), files,
                                  [&](const Json& values, const StepContext& known, FieldReader& reader) {
                                    Inputs inputs;
                                    FieldList list;
                                    inputs.describe(list);
                                    list.read(values, reader);
                                    StepResult result;
                                    if (!reader.problem() && reader.missing().empty()) {
                                      result = evaluate(inputs, known);
                                    }
                                    return result;
                                  });
  };
  return step;
}

}  // namespace fettle
