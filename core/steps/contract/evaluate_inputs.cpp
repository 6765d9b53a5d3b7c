#include <algorithm>
#include <cmath>
#include <set>

#include "core/fields/accepted_numbers.h"
#include "core/measure/text.h"
#include "core/steps/contract/shared_inputs.h"
#include "core/steps/contract/step.h"
#include "core/steps/contract/wording.h"

namespace fettle::detail {
namespace {

using Run = std::function<StepResult(const Json&, const StepContext&, FieldReader&)>;

/// A word where a setting of this step is a number; a blank one is only not known.
std::optional<std::string> wordAsFound(const Step& step, const SettingValues& asFound) {
  for (const auto& [id, value] : asFound) {
    const SettingDescription* described = step.setting(id);
    if (described && !described->unit.empty() && !value.number && !value.blank()) {
      return wordForNumber(id, value.text, described->unit);
    }
  }
  return std::nullopt;
}

bool isInRow(const std::string& path) {
  return path.find("].") != std::string::npos;
}

/// The step's result; where it refuses its inputs as a whole, the refusal and nothing else.
StepResult attempted(const Step& step, const Json& values, const StepContext& context, FieldReader& reader,
                     const Run& run) {
  try {
    return run(values, context, reader);
  } catch (const Refusal& refusal) {
    StepResult result;
    result.complete = false;
    result.refuse(refusal);
    for (const auto& pattern : step.headline) {
      const ResultDescription* headline = step.describe(pattern);
      if (namesOf(pattern).empty()) {
        result.withhold(ResultId{pattern, headline->unit, {}}, refusal.sentence);
      }
    }
    result.charts = step.emptyCharts;
    return result;
  }
}

/// A headline result that nobody gave waits for what is missing.
void withholdHeadlines(const Step& step, StepResult& result) {
  for (const auto& pattern : step.headline) {
    if (namesOf(pattern).empty() && !result.find(pattern) && !result.missing.empty()) {
      result.values.push_back(
          {pattern, std::nullopt, step.describe(pattern)->unit, {}, result.missing, {}});
    }
  }
}

void sayWhatIsLacking(const Step& step, StepResult& result) {
  const Wording wording(step, &result);
  for (auto& value : result.values) {
    if (!value.quantity && value.why.empty()) {
      value.why = value.lacks.empty() ? Text::tr("needs an entry that was refused")
                                      : say(Text::tr("needs {0}"), wording.paths(value.lacks));
    }
  }
  if (result.next.empty() && !result.missing.empty()) {
    const std::string& first = result.missing.front();
    result.next.push_back({first, std::nullopt, say(Text::tr("Enter {0}."), wording.paths({first}))});
  }
}

bool isHeadline(const Step& step, const std::string& id) {
  return std::any_of(step.headline.begin(), step.headline.end(),
                     [&](const std::string& pattern) { return matchesPattern(id, pattern); });
}

bool holdsPath(const std::vector<std::string>& paths, const std::string& path) {
  return std::find(paths.begin(), paths.end(), path) != paths.end();
}

/// A needed entry outside the rows of a table is blank, or a headline result waits for one. What only other
/// results wait for is missing too, but the step is complete without it.
bool lacksEntries(const Step& step, const StepResult& result, const std::vector<std::string>& required) {
  const auto isWaitedFor = [&](const std::string& path) {
    return std::any_of(result.values.begin(), result.values.end(),
                       [&](const ResultValue& value) { return holdsPath(value.lacks, path); });
  };
  const bool needed =
      std::any_of(result.missing.begin(), result.missing.end(), [&](const std::string& path) {
        return !isInRow(path) && (holdsPath(required, path) || !isWaitedFor(path));
      });
  return needed || std::any_of(result.values.begin(), result.values.end(), [&](const ResultValue& value) {
           return !value.lacks.empty() && isHeadline(step, value.id);
         });
}

/// What is missing, in the order of the form.
void orderAsInForm(const Step& step, StepResult& result) {
  const auto place = [&](const std::string& path) {
    const std::string key = path.substr(0, path.find('['));
    return std::find_if(step.fields.begin(), step.fields.end(),
                        [&](const Field& field) { return field.key == key; });
  };
  std::stable_sort(result.missing.begin(), result.missing.end(),
                   [&](const std::string& a, const std::string& b) { return place(a) < place(b); });
}

/// A table is not asked for while one of its rows waits for a cell.
void askForCellsFirst(StepResult& result) {
  const std::vector<std::string> all = result.missing;
  std::erase_if(result.missing, [&](const std::string& path) {
    return std::any_of(all.begin(), all.end(),
                       [&](const std::string& other) { return other.rfind(path + "[", 0) == 0; });
  });
}

void noteRefusals(StepResult& result, const FieldReader& reader) {
  for (const auto& refused : reader.refusals()) {
    result.addFinding("refused", Severity::fault, refused.sentence, {}, refused.path);
  }
}

bool isDrawable(const Chart& chart) {
  const auto finite = [](double value) { return std::isfinite(value); };
  const auto allFinite = [&](const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), finite);
  };
  return std::all_of(chart.series.begin(), chart.series.end(),
                     [&](const Series& series) { return allFinite(series.x) && allFinite(series.y); }) &&
         std::all_of(chart.lines.begin(), chart.lines.end(),
                     [&](const LimitLine& line) { return finite(line.at); }) &&
         std::all_of(chart.bands.begin(), chart.bands.end(),
                     [&](const IntervalBand& band) { return finite(band.from) && finite(band.to); }) &&
         (!chart.top || finite(chart.top->factor));
}

/// A chart computed with a refused number draws nothing rather than something wrong.
void emptyUndrawable(StepResult& result) {
  for (auto& chart : result.charts) {
    if (!isDrawable(chart)) {
      chart.series.clear();
      chart.lines.clear();
      chart.bands.clear();
      chart.top.reset();
      chart.surface.reset();
    }
  }
}

void fillInSettings(const StepContext& context, StepResult& result) {
  for (auto& proposal : result.settings) {
    const auto read = result.found.find(proposal.id);
    proposal.asFound = read != result.found.end() ? read->second : context.asFoundValue(proposal.id);
    const SettingValue inForce = context.inForceValue({proposal.id, {}, {}});
    proposal.inForce = inForce.blank() ? proposal.asFound : inForce;
  }
}

std::optional<std::string> unknownKeys(const FieldReader& reader) {
  if (reader.unknown().empty()) {
    return std::nullopt;
  }
  return say(Text::tr("This step has no field {0}."), fmt::to_string(fmt::join(reader.unknown(), ", ")));
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
    StepResult result = attempted(step, values, context, reader, run);
    if (const auto unknown = unknownKeys(reader)) {
      return tl::unexpected(*unknown);
    }
    if (reader.fileProblem()) {
      return tl::unexpected(*reader.fileProblem());
    }
    result.step = step.key;
    const auto given = std::move(result.missing);
    result.missing = reader.missing();
    result.want(given);
    orderAsInForm(step, result);
    noteRefusals(result, reader);
    withholdHeadlines(step, result);
    sayWhatIsLacking(step, result);
    result.complete = result.complete && !lacksEntries(step, result, reader.missing());
    askForCellsFirst(result);
    fillInSettings(context, result);
    judgeResults(step, context, result);
    if (result.charts.empty()) {
      result.charts = step.emptyCharts;
    }
    emptyUndrawable(result);
    return result;
  } catch (const Cancelled&) {
    return tl::unexpected(Text::tr("The work was cancelled."));
  }
}

}  // namespace fettle::detail
