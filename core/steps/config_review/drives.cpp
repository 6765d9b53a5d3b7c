#include "core/steps/config_review/drives.h"

#include <cmath>
#include <numbers>

#include "core/measure/format.h"
#include "core/measure/text.h"

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

void noteSteps(StepResult& result, const std::string& axis, double found, double expected) {
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
      "axis-travel");
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
  const std::string id = axis + ".steps_per_mm";
  const auto withhold = [&](const std::string& why) {
    result.withhold(id + "_expected", "1/mm", why);
    result.withhold(id + "_ratio", "1", why);
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
  result.give(id + "_expected", expected, "1/mm");
  const auto found = review.number(id);
  if (!found) {
    result.withhold(id + "_ratio", "1", Text::tr("the steps per mm as found are not known"));
    return;
  }
  result.give(id + "_ratio", *found / expected, "1");
  noteSteps(result, axis, *found, expected);
  if (std::abs(*found / expected - 1) > stepsTolerance) {
    result.propose(id, {*found, {}}, plainQuantity(expected, "1/mm"));
  }
}

void judgeCurrent(StepResult& result, const Review& review, const std::string& axis) {
  const std::string rmsId = axis + ".motor_current_rms_A";
  const std::string ratioId = axis + ".current_ratio";
  std::string why;
  const auto current = currentOf(review, axis, why);
  if (!current) {
    result.withhold(rmsId, "A", why);
    result.withhold(ratioId, "1", why);
    return;
  }
  result.give(rmsId, current->rms(), "A");
  const auto rated = driveOf(review.sheet, axis).motorRated;
  if (!rated) {
    result.withhold(ratioId, "1",
                    say(Text::tr("not on the machine sheet: {0}"), sheetLabel(axis + ".motor_rated_A")));
    return;
  }
  const double ratio = current->rms() / *rated;
  result.give(ratioId, ratio, "1");
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
      "motion-limits");
  result.propose(axis + ".motor_current_A", {current->given, {}},
                 plainQuantity(current->peak ? std::numbers::sqrt2 * allowed : allowed, "A"));
}

}  // namespace fettle
