#include "core/steps/config_review/drives.h"

#include <cmath>
#include <numbers>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/config_review/results.h"

namespace fettle {
namespace {

constexpr double stepsTolerance = 0.005, stepsFault = 0.02, currentLimit = 0.85;

const AxisDrive& driveOf(const MachineSheet& sheet, const std::string& axis) {
  return axis == "x" ? sheet.x : axis == "y" ? sheet.y : sheet.z;
}

std::string lacking(const AxisDrive& drive, const std::string& axis) {
  std::string names;
  const auto need = [&](bool there, const char* key) {
    if (!there) {
      names += (names.empty() ? "" : ", ") + sheetLabel(axis + "." + key);
    }
  };
  need(!drive.drive.empty(), "drive");
  need(drive.stepAngle.has_value(), "step_angle_deg");
  need(drive.microsteps.has_value(), "microsteps");
  if (drive.drive == "screw") {
    need(drive.lead.has_value(), "lead_mm");
  } else {
    need(drive.pitch.has_value(), "pitch_mm");
    need(drive.teeth.has_value(), "teeth");
  }
  return names;
}

/// In words what a ratio of steps would come from.
std::string likelyCause(double ratio) {
  for (const double power : {0.125, 0.25, 0.5, 2.0, 4.0, 8.0}) {
    if (std::abs(ratio / power - 1) <= stepsTolerance) {
      return Text::tr("A power of two: microsteps or full-step angle differ from the sheet.");
    }
  }
  return Text::tr("Count the teeth, or look at the lead, before you trust either number.");
}

void noteSteps(StepResult& result, const std::string& axis, double found, double expected,
               const std::string& at) {
  const double ratio = found / expected;
  const double off = std::abs(ratio - 1);
  if (off <= stepsTolerance) {
    return;
  }
  const std::string follows = say(
      Text::tr("{0}: {1} steps per mm as found, {2} from the parts on the sheet: a move of 100 mm would "
               "go {3} mm."),
      axis, formatPlain(found), formatPlain(expected), formatFixed(100 * ratio, 1));
  const bool adjusted = off <= stepsFault;
  result.addFinding(
      "steps-per-mm", adjusted ? Severity::caution : Severity::fault,
      follows + ' ' + (adjusted ? Text::tr("It may have been adjusted by measuring.") : likelyCause(ratio)),
      "axis-travel", at);
}

struct MotorCurrent {
  double given = 0;
  bool peak = false;
  double rms() const { return peak ? given / std::numbers::sqrt2 : given; }
};

/// Why there is none is left in `why`.
std::optional<MotorCurrent> currentOf(const Review& review, const std::string& axis, std::string& why) {
  const AxisDrive& drive = driveOf(review.sheet, axis);
  const auto found = review.number(axis + ".motor_current_A");
  const auto given = found ? found : drive.motorCurrent;
  const std::string asFound = review.word(axis + ".current_is");
  const std::string kind = found && !asFound.empty() ? asFound : drive.currentIs;
  if (!given) {
    why = Text::tr("the motor current is not known");
    return std::nullopt;
  }
  if (kind != "rms" && kind != "peak") {
    why = Text::tr("it is not known whether the current is rms or peak");
    return std::nullopt;
  }
  return MotorCurrent{*given, kind == "peak"};
}

}  // namespace

void judgeSteps(StepResult& result, const Review& review, const std::string& axis) {
  const auto& key = keysOf<ConfigReviewResults>();
  const std::string id = axis + ".steps_per_mm";
  const auto withhold = [&](const std::string& why) {
    result.withhold(key.stepsExpected(axis), why);
    result.withhold(key.stepsRatio(axis), why);
  };
  if (review.sheet.motion == "delta") {
    withhold(Text::tr("does not apply to this motion"));
    return;
  }
  const AxisDrive& drive = driveOf(review.sheet, axis);
  if (const std::string names = lacking(drive, axis); !names.empty()) {
    withhold(say(Text::tr("not on the machine sheet: {0}"), names));
    return;
  }
  const double perTurn = drive.drive == "screw" ? *drive.lead : *drive.pitch * *drive.teeth;
  const double expected = 360 / *drive.stepAngle * *drive.microsteps / perTurn;
  result.give(key.stepsExpected(axis), expected);
  const auto found = review.number(id);
  if (!found) {
    result.withhold(key.stepsRatio(axis), Text::tr("the steps per mm as found are not known"));
    return;
  }
  result.give(key.stepsRatio(axis), *found / expected);
  noteSteps(result, axis, *found, expected, review.at(id));
  if (std::abs(*found / expected - 1) > stepsTolerance) {
    result.propose(key.setting(id), plainQuantity(expected, "1/mm"));
  }
}

void judgeCurrent(StepResult& result, const Review& review, const std::string& axis) {
  const auto& key = keysOf<ConfigReviewResults>();
  const ResultId rmsId = key.currentRms(axis);
  const ResultId ratioId = key.currentRatio(axis);
  std::string why;
  const auto current = currentOf(review, axis, why);
  if (!current) {
    result.withhold(rmsId, why);
    result.withhold(ratioId, why);
    return;
  }
  result.give(rmsId, current->rms());
  const auto rated = driveOf(review.sheet, axis).motorRated;
  if (!rated) {
    result.withhold(ratioId,
                    say(Text::tr("not on the machine sheet: {0}"), sheetLabel(axis + ".motor_rated_A")));
    return;
  }
  const double ratio = current->rms() / *rated;
  result.give(ratioId, ratio);
  if (ratio <= currentLimit) {
    return;
  }
  const double allowed = currentLimit * *rated;
  result.addFinding(
      "current-high", ratio > 1 ? Severity::fault : Severity::caution,
      say(Text::tr("{0}: {1} A rms are {2} % of the rated {3} A, more than 85 % ({4} A rms): the motor "
                   "gets hotter than its mount may bear."),
          axis, formatPlain(current->rms()), formatFixed(100 * ratio, 0), formatNumber(*rated),
          formatPlain(allowed)),
      "motion-limits", review.at(axis + ".motor_current_A"));
  result.propose(key.setting(axis + ".motor_current_A"),
                 plainQuantity(current->peak ? std::numbers::sqrt2 * allowed : allowed, "A"));
}

}  // namespace fettle
