#include "core/steps/axis_travel/scale.h"

#include <algorithm>
#include <cmath>

#include "core/maths/least_squares.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/axis_travel/parts.h"

namespace fettle {
namespace {

constexpr double searchBeyond = 0.005;  // pairs of parts are found to 0.5 %, so below it there is none

bool bothDirections(const AxisRuns& runs) {
  const auto up = [](const AxisMove& move) { return *move.direction > 0; };
  return std::any_of(runs.moves.begin(), runs.moves.end(), up) &&
         !std::all_of(runs.moves.begin(), runs.moves.end(), up);
}

void withholdScale(StepResult& result, const std::string& axis) {
  const std::string why = Text::tr("does not apply to this motion");
  result.withhold(axis + ".scale_error", "1", why);
  result.withhold(axis + ".travel_ratio", "1", why);
  result.withhold(axis + ".steps_per_mm", "1/mm", why);
}

/// The parts on the sheet give other steps per mm than found, and the travel agrees with the parts.
bool sheetExplains(StepResult& result, const std::string& axis, double ratio,
                   const std::optional<double>& theory, const std::optional<double>& found) {
  if (!theory || !found || *found <= 0 || std::abs(*found / *theory / ratio - 1) > searchBeyond) {
    return false;
  }
  result.addFinding(
      "sheet-explains-travel", Severity::caution,
      say(Text::tr("{0}: the parts on the machine sheet need {1} steps per mm, {2} were found; the "
                   "travel agrees with the sheet."),
          axis, formatPlain(*theory), formatPlain(*found)),
      "config-review");
  return true;
}

/// What can be said of a ratio far from 1: the pairs of parts that explain it, and the one that is left.
void givePairs(StepResult& result, const std::string& axis, double ratio, const AxisDrive& sheet,
               const std::optional<double>& found) {
  std::string left, struckOut;
  std::size_t count = 0;
  const auto pairs = explainingPairs(ratio, sheet, found);
  for (const auto& pair : pairs) {
    std::string& list = pair.contradiction.empty() ? left : struckOut;
    list += list.empty() ? "" : "; ";
    list += pair.words();
    if (pair.contradiction.empty()) {
      ++count;
    } else {
      list += " (" + pair.contradiction + ")";
    }
  }
  const std::string none = Text::tr("none");
  result.say(axis + ".pairs_left", left.empty() ? none : left);
  result.say(axis + ".pairs_struck_out", struckOut.empty() ? none : struckOut);
  const std::string number = formatFixed(ratio, 4);
  const bool explained = sheetExplains(result, axis, ratio, stepsPerMmOf(sheet), found);
  if (count == 1) {
    result.addFinding(
        "wrong-part", Severity::fault,
        say(Text::tr("{0}: measured / commanded travel is {1}. Of the common parts only one fits: {2}. "
                     "Look at the part before you change a number."),
            axis, number, left),
        "config-review");
  } else if (count > 1) {
    result.addFinding(
        "travel-ratio-off", Severity::caution,
        say(Text::tr("{0}: measured / commanded travel is {1}. {2} pairs of parts would explain it: "
                     "{3}. Fill in the drive on the machine sheet to strike some out."),
            axis, number, count, left),
        "config-review");
  } else if (!explained) {
    result.addFinding(
        "travel-ratio-off", Severity::caution,
        say(Text::tr("{0}: measured / commanded travel is {1}, and no single common part explains it. "
                     "Check the reading, lost steps and a slipping pulley."),
            axis, number));
  }
}

void proposeSteps(StepResult& result, const std::string& axis, const Quantity& measured,
                  const AxisDrive& sheet, const StepContext& context) {
  const std::string id = axis + ".steps_per_mm";
  const auto theory = stepsPerMmOf(sheet);
  const double allowed = expandedUncertainty(measured).value_or(0);
  const bool inside = theory && std::abs(*theory - measured.value) <= allowed;
  if (sheet.drive == "belt" && inside) {
    result.propose(id, context.asFoundValue(id), plainQuantity(*theory, "1/mm"));
    result.addFinding(
        "theoretical-steps", Severity::note,
        say(Text::tr("{0}: the belt, pulley and motor on the sheet give {1} steps per mm, inside U of "
                     "the measured {2}: the theoretical value is proposed."),
            axis, formatNumber(*theory), formatValue(measured)));
    return;
  }
  result.propose(id, context.asFoundValue(id), measured);
}

}  // namespace

TravelScale scaleOf(const AxisRuns& runs, const Instrument& instrument) {
  const auto n = static_cast<Eigen::Index>(runs.moves.size());
  const Eigen::Index parameters = bothDirections(runs) ? 3 : 2;
  if (n < parameters) {
    throw Refusal{
        say(Text::tr("Moves: {0} moves of {1} are fewer than the {2} figures of a straight line with "
                     "reversal; enter {2} or more."),
            n, runs.axis, parameters)};
  }
  Eigen::MatrixXd design(n, parameters);
  Eigen::VectorXd measured(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const AxisMove& move = runs.moves[static_cast<std::size_t>(i)];
    design(i, 0) = 1;
    design(i, 1) = *move.target;
    if (parameters == 3) {
      design(i, 2) = *move.direction;
    }
    measured(i) = *move.measured;
  }
  const auto fit = maths::fitLeastSquares(design, measured);
  if (!fit) {
    throw Refusal{
        say(Text::tr("Moves: the targets of {0} follow the direction of approach, so scale and "
                     "reversal cannot be told apart; approach one target or more from both sides."),
            runs.axis)};
  }
  const double span = runs.targets.back().target - runs.targets.front().target;
  const Contribution parts[] = {
      {fit->standardErrors()(1),
       fit->degreesOfFreedom > 0 ? fit->degreesOfFreedom : infiniteDegreesOfFreedom},
      {instrument.r / std::sqrt(12.0) * std::sqrt(fit->unscaledCovariance(1, 1))},
      {instrument.limitOfError(span) / std::sqrt(3.0) / span}};
  return {combinedQuantity(fit->coefficients(1), "1", parts)};
}

std::optional<double> stepsPerMmOf(const AxisDrive& drive) {
  if (!drive.stepAngle || !drive.microsteps) {
    return std::nullopt;
  }
  const double stepsPerTurn = 360 / *drive.stepAngle * *drive.microsteps;
  if (drive.drive == "belt" && drive.pitch && drive.teeth) {
    return stepsPerTurn / (*drive.pitch * *drive.teeth);
  }
  return drive.drive == "screw" && drive.lead ? std::optional(stepsPerTurn / *drive.lead) : std::nullopt;
}

const AxisDrive& driveOf(const MachineSheet& sheet, const std::string& axis) {
  return axis == "x" ? sheet.x : axis == "y" ? sheet.y : sheet.z;
}

void giveScale(StepResult& result, const AxisRuns& runs, const Instrument& instrument,
               const StepContext& context) {
  const std::string& axis = runs.axis;
  if (context.sheet.motion == "delta") {
    withholdScale(result, axis);
    return;
  }
  const Quantity ratio = scaleOf(runs, instrument).ratio;
  if (ratio.value <= *ratio.u) {
    throw Refusal{say(Text::tr("Moves: the measured positions of {0} do not rise with its targets (ratio "
                               "{1}); positions measured in the direction of the axis are needed."),
                      axis, formatFixed(ratio.value, 3))};
  }
  Quantity error = ratio;
  error.value -= 1;
  result.give(axis + ".scale_error", error);
  result.give(axis + ".travel_ratio", ratio);
  const AxisDrive& sheet = driveOf(context.sheet, axis);
  const auto found = context.asFoundNumber(axis + ".steps_per_mm");
  if (std::abs(error.value) > searchBeyond) {
    givePairs(result, axis, ratio.value, sheet, found);
  } else if (std::abs(error.value) <= expandedUncertainty(error).value_or(0)) {
    result.addFinding(
        "scale-within-uncertainty", Severity::note,
        say(Text::tr("{0}: the scale error {1} is not larger than its uncertainty: nothing calls for a "
                     "change of the steps per mm."),
            axis, formatValue(error)));
  }
  if (!found || *found <= 0) {
    result.withhold(axis + ".steps_per_mm", "1/mm", Text::tr("the steps per mm as found are not known"));
    return;
  }
  Quantity steps = plainQuantity(*found / ratio.value, "1/mm");
  steps.u = *ratio.u * steps.value / ratio.value;
  steps.dof = ratio.dof;
  result.give(axis + ".steps_per_mm", steps);
  proposeSteps(result, axis, steps, sheet, context);
}

}  // namespace fettle
