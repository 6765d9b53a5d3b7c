#include "core/steps/contract/step.h"

#include <algorithm>
#include <set>

#include "core/fields/accepted_numbers.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/shared_inputs.h"

namespace fettle {
namespace {

/// The inputs without table rows in which a needed cell is blank: what can be drawn so far.
Json withoutUnfinishedRows(const Json& inputs, const std::vector<std::string>& missing) {
  std::set<std::pair<std::string, std::size_t>, std::greater<>> unfinished;
  for (const auto& path : missing) {
    const std::size_t open = path.find('[');
    if (open != std::string::npos) {
      unfinished.emplace(path.substr(0, open), std::stoul(path.substr(open + 1)));
    }
  }
  Json kept = inputs;
  for (const auto& [table, row] : unfinished) {  // from the last row to the first
    if (kept[table].is_array() && row <= kept[table].size()) {
      kept[table].erase(row - 1);
    }
  }
  return kept;
}

}  // namespace

std::string guardBandsFill(const std::string& what, const std::string& unit, const Judgement& judgement,
                           double width) {
  return say(Text::tr("{0}: the guard bands of 2 × {1} fill the tolerance of {2}; no reading could pass."),
             what, formatQuantity(plainQuantity(judgement.guardBand, unit)),
             formatQuantity(plainQuantity(width, unit)));
}

std::string tooCoarseSentence(const std::string& what, const std::string& unit, const Judgement& judgement,
                              double width, const Instrument* used) {
  std::string text = guardBandsFill(what, unit, judgement, width);
  auto better = instrumentThatWouldDo(width, unit);
  if (better && used && better->standardUncertainty(0) >= used->standardUncertainty(0)) {
    better.reset();  // what fills the tolerance is the scatter
  }
  text += ' ';
  text += better ? say(Text::tr("A {0} (limit of error {1}) would do."), better->name,
                       formatQuantity(plainQuantity(better->e, unit)))
          : used ? Text::tr("More readings would do.")
                 : Text::tr("More readings, or an instrument with a smaller limit of error, would do.");
  return text;
}

std::string stageName(Stage stage) {
  switch (stage) {
    case Stage::makeSafe:
      return Text::tr("Make safe");
    case Stage::heat:
      return Text::tr("Heat");
    case Stage::motion:
      return Text::tr("Motion");
    case Stage::bed:
      return Text::tr("Bed");
    case Stage::plastic:
      return Text::tr("Plastic");
    case Stage::limitsAndProof:
      return Text::tr("Limits and proof");
  }
  return {};
}

const ResultDescription* Step::describe(const std::string& resultId) const {
  const auto found = std::find_if(results.begin(), results.end(), [&](const ResultDescription& result) {
    return matchesPattern(resultId, result.id);
  });
  return found == results.end() ? nullptr : &*found;
}

Tolerance toleranceOf(const Step& step, const StepContext& context, const std::string& resultId) {
  if (const auto changed = context.changedTolerance(step.key + "." + resultId)) {
    return *changed;
  }
  const ResultDescription* described = step.describe(resultId);
  return described ? described->tolerance : Tolerance{};
}

void judgeResults(const Step& step, const StepContext& context, StepResult& result) {
  for (const auto& value : result.values) {
    const ResultDescription* described = step.describe(value.id);
    if (!described || !described->judged || !value.quantity || result.verdicts.count(value.id) > 0) {
      continue;
    }
    const Tolerance tolerance = toleranceOf(step, context, value.id);
    const Judgement judgement = judge(*value.quantity, tolerance);
    result.verdicts[value.id] = judgement.verdict;
    if (judgement.tooCoarse) {
      const double width = *tolerance.high - *tolerance.low;
      result.find("instrument-too-coarse", Severity::caution,
                  tooCoarseSentence(described->label, value.quantity->unit, judgement, width));
    }
  }
}

namespace detail {
namespace {

using Run = std::function<StepResult(const Json&, const StepContext&, FieldReader&)>;

/// A word where a setting of this step is a number; a blank one is only not known.
std::optional<std::string> wordAsFound(const Step& step, const SettingValues& asFound) {
  for (const auto& [id, value] : asFound) {
    const auto described =
        std::find_if(step.settings.begin(), step.settings.end(),
                     [&](const SettingDescription& setting) { return matchesPattern(id, setting.id); });
    if (described != step.settings.end() && !described->unit.empty() && !value.number && !value.blank()) {
      return wordForNumber(id, value.text, described->unit);
    }
  }
  return std::nullopt;
}

/// What the finished rows draw and give cause to while others lack a cell; nothing when even they cannot be
/// used.
StepResult resultSoFar(const Json& finished, const StepContext& context, InputFiles& files,
                       const Run& run) {
  try {
    FieldReader reader(&files);
    StepResult part = run(finished, context, reader);
    return reader.problem() ? StepResult{} : std::move(part);
  } catch (const Refusal&) {
    return {};
  }
}

}  // namespace

tl::expected<StepResult, std::string> evaluateInputs(const Step& step, const Json& inputs,
                                                     StepContext context, InputFiles& files,
                                                     const Run& run) {
  if (!inputs.is_object()) {
    return tl::unexpected(Text::tr("The inputs of a step are one JSON object keyed by field."));
  }
  Json values = inputs;
  if (auto taken = takeSharedInputs(step.fields, values, context); !taken) {
    return tl::unexpected(taken.error());
  }
  if (const auto word = wordAsFound(step, context.asFound)) {
    return tl::unexpected(*word);
  }
  try {
    FieldReader reader(&files);
    StepResult result = run(values, context, reader);
    if (reader.problem()) {
      return tl::unexpected(*reader.problem());
    }
    if (!reader.missing().empty()) {
      result = resultSoFar(withoutUnfinishedRows(values, reader.missing()), context, files, run);
      result.missing = reader.missing();
    }
    result.complete = result.missing.empty();
    result.step = step.key;
    if (result.complete) {
      judgeResults(step, context, result);
    } else {
      result.values.clear();
      result.texts.clear();
      result.settings.clear();
      result.found.clear();
      result.verdicts.clear();
      if (result.charts.empty()) {
        result.charts = step.emptyCharts;
      }
    }
    if (!reader.unknown().empty()) {
      result.find("unknown-field", Severity::caution,
                  say(Text::tr("Not used, because this step has no such field: {0}."),
                      fmt::to_string(fmt::join(reader.unknown(), ", "))));
    }
    return result;
  } catch (const Refusal& refusal) {
    return tl::unexpected(refusal.sentence);
  } catch (const Cancelled&) {
    return tl::unexpected(Text::tr("The work was cancelled."));
  }
}

}  // namespace detail
}  // namespace fettle
