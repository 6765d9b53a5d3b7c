#include "core/steps/config_review.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/config_review/drives.h"
#include "core/steps/config_review/limits.h"
#include "core/steps/config_review/probing.h"
#include "core/steps/config_review/results.h"
#include "core/steps/config_review/review.h"
#include "core/steps/config_review/settings.h"

namespace fettle {
namespace {

bool isKnown(const SettingValues& values) {
  return std::any_of(values.begin(), values.end(),
                     [](const auto& value) { return !value.second.blank() && findListed(value.first); });
}

void judgeAll(StepResult& result, const Review& review) {
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
  result.give(keysOf<ConfigReviewResults>().inconsistencies, static_cast<double>(count));
}

Chart emptyPlan() {
  const MachineSheet blank;
  return reviewPlan({blank, {}, {}});
}

}  // namespace

StepResult evaluate(const ConfigReviewInputs& inputs, const StepContext& context) {
  StepResult result;
  const auto rows = included(inputs.listed);
  const Review review = reviewOf(result, rows, context);
  if (rows.empty() && !isKnown(context.asFound)) {
    result.want({"found"});
  } else {
    judgeAll(result, review);
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
  step.entryWidth = EntryWidth::wide;
  step.benchMinutes = 20;  // common practice, no source
  step.readsSheet = {
      "motion",           "travel_min_x", "travel_max_x",      "travel_min_y",    "travel_max_y",
      "travel_min_z",     "travel_max_z", "bed_shape",         "bed_min_x",       "bed_max_x",
      "bed_min_y",        "bed_max_y",    "bed_radius",        "nozzle_mm",       "filament_mm",
      "hot_end_power_W",  "bed_power_W",  "supply_W",          "hot_end_max_C",   "hot_end_liner",
      "bed_max_C",        "*.drive",      "*.pitch_mm",        "*.teeth",         "*.lead_mm",
      "*.step_angle_deg", "*.microsteps", "*.motor_current_A", "*.motor_rated_A", "*.current_is"};
  step.emptyCharts = {emptyPlan()};
  return describedStep<ConfigReviewResults, ConfigReviewInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
