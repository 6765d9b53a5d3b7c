#pragma once
#include <functional>
#include <map>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/field_list.h"
#include "core/steps/contract/result_list.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

enum class Stage { makeSafe, heat, motion, bed, plastic, limitsAndProof };

/// The heading of a stage in the step list.
std::string stageName(Stage stage);

/// How much of the page a step's entry likes to have.
enum class EntryWidth { narrow, normal, wide };

/// Rows with the commanded values filled in, so that only readings are typed: targets, flows, devices.
struct EntryPlan {
  std::string key;
  std::string label;  ///< of the button: "Targets of ISO 230-2"
  std::string table;  ///< key of the table it fills
  /// The rows, keyed by column, from what is typed so far and what is known of the machine.
  std::function<Json(const Json& inputs, const StepContext& context)> rows;
};

/// One step of the bench. To add one:
///  1. write core/steps/<key>/inputs.h (the inputs struct with describe(FieldList&)), results.h (the
///  results
///     struct with describe(ResultList&)) and the pair core/steps/<key>.h/.cpp (a pure `StepResult
///     evaluate(const Inputs&, const StepContext&)` and a function that returns its Step); parts that are
///     worth a file of their own go to the folder too;
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
  std::string caution;  ///< shown above the entry; empty for none
  EntryWidth entryWidth = EntryWidth::normal;
  double benchMinutes = 0;              ///< of work, as a first guess
  double waitMinutes = 0;               ///< of waiting: soaking, heating, printing
  std::vector<std::string> reads;       ///< accepted results of other steps: "<step>.<result id>"
  std::vector<std::string> readsSheet;  ///< keys of the machine sheet it reads; "*.pitch_mm" of every axis
  std::vector<std::string> disturbs;    ///< part groups that accepting a run of it sets off
  std::vector<EntryPlan> plans;
  // Filled in by the results struct:
  std::vector<std::string> headline;  ///< ids (patterns) of the values in the answer band, three at most
  std::vector<ResultDescription> results;
  std::vector<SettingDescription> settings;              ///< proposed, or read as found
  std::map<std::string, std::vector<Choice>> idChoices;  ///< by the <name> of an id
  // Filled in by the inputs struct:
  std::vector<Field> fields;
  std::vector<Chart> emptyCharts;  ///< shown while inputs are incomplete and draw nothing yet
  /// Reads inputs and evaluates. The error is one sentence about inputs that cannot be read at all: no
  /// object, an unknown key, a file that cannot be read. A refused cell, row or group is a finding
  /// `refused` of severity fault with its place; what needs it is withheld.
  std::function<tl::expected<StepResult, std::string>(const Json& inputs, StepContext context,
                                                      InputFiles& files)>
      evaluate;

  /// The description of a result id, or null.
  const ResultDescription* describe(const std::string& resultId) const;
  /// Whether `readsSheet` names a key of the machine sheet.
  bool readsSheetKey(const std::string& sheetKey) const;
  /// The description of a setting id, or null.
  const SettingDescription* setting(const std::string& settingId) const;
};

/// The tolerance of a result: the user's, else the default of its description.
Tolerance toleranceOf(const Step& step, const StepContext& context, const std::string& resultId);

namespace detail {
/// The part of an evaluation that does not depend on the inputs' type. `run` describes, reads and
/// evaluates.
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
                                    return reader.fileProblem() ? StepResult{} : evaluate(inputs, known);
                                  });
  };
  return step;
}

/// Completes a Step with what follows from its inputs and its results type.
template <typename Results, typename Inputs>
Step describedStep(Step step, StepResult (*evaluate)(const Inputs&, const StepContext&)) {
  Results results;
  ResultList list;
  results.describe(list);
  step.headline = list.headlines();
  step.results = list.results();
  step.settings = list.settings();
  step.idChoices = list.choices();
  return withInputs<Inputs>(std::move(step), evaluate);
}

}  // namespace fettle
