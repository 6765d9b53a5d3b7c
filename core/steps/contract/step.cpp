#include "core/steps/contract/step.h"

#include <algorithm>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
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

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const auto& word : words) {
    text += (text.empty() ? "" : ", ") + word;
  }
  return text;
}

std::string tooCoarse(const ResultDescription& result, const Quantity& quantity, double guardBand,
                      double width) {
  const std::string unit = displayUnit(quantity.unit);
  std::string text = say(Text::tr("{0}: the guard bands of 2 × {1} {2} fill the tolerance of {3} {2}; "
                                  "no reading could pass."),
                         result.label, formatPlain(guardBand), unit, formatNumber(width));
  if (const auto better = instrumentThatWouldDo(width, quantity.unit)) {
    text += ' ';
    text += say(Text::tr("A {0} (limit of error {1} {2}) would do."), better->name, formatNumber(better->e),
                unit);
  } else {
    text += ' ';
    text += Text::tr("More readings, or an instrument with a smaller limit of error, would do.");
  }
  return text;
}

}  // namespace

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
  const auto changed = context.tolerances.find(step.key + "." + resultId);
  if (changed != context.tolerances.end()) {
    return changed->second;
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
                  tooCoarse(*described, *value.quantity, judgement.guardBand, width));
    }
  }
}

namespace detail {
namespace {

using Run = std::function<StepResult(const Json&, const StepContext&, FieldReader&)>;

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
      result.find(
          "unknown-field", Severity::caution,
          say(Text::tr("Not used, because this step has no such field: {0}."), joined(reader.unknown())));
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
