#pragma once
#include "core/steps/config_review/review.h"

namespace fettle {

/// `<axis>.steps_per_mm_expected` from the sheet: belt 360/step_angle·microsteps/(pitch·teeth), screw
/// 360/step_angle·microsteps/lead. `<axis>.steps_per_mm_ratio` = as found/expected within 0.5 %: finding
/// `steps-per-mm`, a caution up to 2 % (it may have been adjusted by measuring), a fault beyond; proposes
/// the expected value. Does not apply to a delta.
void judgeSteps(StepResult& result, const Review& review, const std::string& axis);

/// `<axis>.motor_current_rms_A`: as found, else of the sheet; peak = √2·rms. `<axis>.current_ratio` =
/// that/rated ≤ 0.85, rated taken as rms with both windings on, as data sheets of stepping motors give it.
/// Finding `current-high`: caution, above the rated current a fault; proposes 85 % in the form it was given
/// in.
void judgeCurrent(StepResult& result, const Review& review, const std::string& axis);

}  // namespace fettle
