#include "core/steps/config_review.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/config_review/drives.h"
#include "core/steps/config_review/limits.h"
#include "core/steps/config_review/probing.h"
#include "core/steps/config_review/review.h"
#include "core/steps/config_review/settings.h"

namespace fettle {
namespace {

std::vector<Choice> settingChoices() {
  std::vector<Choice> choices;
  for (const auto& setting : listedSettings()) {
    choices.push_back({setting.description.id, setting.description.label});
  }
  return choices;
}

bool isKnown(const SettingValues& values) {
  return std::any_of(values.begin(), values.end(),
                     [](const auto& value) { return !value.second.blank() && findListed(value.first); });
}

void judge(StepResult& result, const Review& review) {
  const auto wrong = checkMachineSheet(review.sheet);
  result.findings.insert(result.findings.end(), wrong.begin(), wrong.end());
  const std::size_t before = result.findings.size() - wrong.size();
  for (const char* axis : {"x", "y", "z"}) {
    judgePlaces(result, review, axis);
    judgeSteps(result, review, axis);
    judgeCurrent(result, review, axis);
    judgeSpeed(result, review, axis);
  }
  judgeRadius(result, review);
  judgeTemperatures(result, review);
  judgeProbing(result, review);
  const auto count =
      std::count_if(result.findings.begin() + static_cast<std::ptrdiff_t>(before), result.findings.end(),
                    [](const Finding& finding) { return finding.severity != Severity::note; });
  result.give("inconsistencies", static_cast<double>(count), "1");
}

Chart emptyPlan() {
  const MachineSheet blank;
  return reviewPlan({blank, {}});
}

}  // namespace

void ListedValue::describe(FieldList& columns) {
  columns.text("name", name, Text::tr("Name")).help(Text::tr("As the controller lists it."));
  columns.text("value", value, Text::tr("Value")).help(Text::tr("With its unit, if it is another one."));
  columns.choice("setting", setting, Text::tr("Setting"), settingChoices())
      .help(Text::tr("What it is; blank: not used."));
}

void ConfigReviewInputs::describe(FieldList& fields) {
  fields.table("found", listed, Text::tr("Found"))
      .help(Text::tr("What the controller lists, typed or pasted as name and value."));
}

StepResult evaluate(const ConfigReviewInputs& inputs, const StepContext& context) {
  StepResult result;
  const auto rows = included(inputs.listed);
  Review review{context.sheet, context.asFound};
  if (rows.empty() && !isKnown(context.asFound)) {
    result.missing.push_back("found");
  } else {
    refuseImpossible(context.asFound);
    result.found = matchedValues(result, rows, context.asFound);
    for (const auto& [id, value] : result.found) {
      review.values[id] = value;
    }
    judge(result, review);
  }
  result.charts = {reviewPlan(review)};
  return result;
}

Step configReviewStep() {
  Step step;
  step.key = "config-review";
  step.name = Text::tr("Configuration review");
  step.purpose = Text::tr("Whether what the controller believes fits what is physically there.");
  step.stage = Stage::makeSafe;
  step.results = {
      {"inconsistencies", "1", Text::tr("Faults and cautions"), {std::nullopt, 0.0}, true},
      {"<axis>.steps_per_mm_expected", "1/mm", Text::tr("Steps per mm of the parts")},
      {"<axis>.steps_per_mm_ratio", "1", Text::tr("Steps as found / expected"), {0.995, 1.005}, true},
      {"<axis>.motor_current_rms_A", "A", Text::tr("Motor current, rms")},
      {"<axis>.current_ratio", "1", Text::tr("Motor current / rated"), {std::nullopt, 0.85}, true},
      {"<axis>.reachable_speed", "mm/s", Text::tr("Highest speed on the travel")},
      {"hot_end_limit_C", "C", Text::tr("Limit of the hot end")},
      {"bed_limit_C", "C", Text::tr("Limit of the bed")},
      {"safe_min_x", "mm", Text::tr("Tip reaches the bed from x")},
      {"safe_max_x", "mm", Text::tr("Tip reaches the bed to x")},
      {"safe_min_y", "mm", Text::tr("Tip reaches the bed from y")},
      {"safe_max_y", "mm", Text::tr("Tip reaches the bed to y")},
  };
  step.settings = reviewedSettings();
  step.emptyCharts = {emptyPlan()};
  return withInputs<ConfigReviewInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
