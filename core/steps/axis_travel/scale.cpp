#include "core/steps/axis_travel/scale.h"

#include <algorithm>
#include <cmath>

#include "core/maths/least_squares.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/axis_travel/drive.h"
#include "core/steps/axis_travel/parts.h"
#include "core/steps/axis_travel/results.h"

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
  const auto& key = keysOf<AxisTravelResults>();
  result.withhold(key.scaleError(axis), why);
  result.withhold(key.travelRatio(axis), why);
  result.withhold(key.stepsPerMm(axis), why);
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
  const auto& key = keysOf<AxisTravelResults>();
  result.give(key.pairsLeft(axis), left.empty() ? none : left);
  result.give(key.pairsStruckOut(axis), struckOut.empty() ? none : struckOut);
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
                  const AxisDrive& sheet) {
  const auto id = keysOf<AxisTravelResults>().stepsPerMmSetting(axis);
  const auto theory = stepsPerMmOf(sheet);
  const double allowed = expandedUncertainty(measured).value_or(0);
  const bool inside = theory && std::abs(*theory - measured.value) <= allowed;
  if (sheet.drive == "belt" && inside) {
    result.propose(id, plainQuantity(*theory, "1/mm"));
    result.addFinding(
        "theoretical-steps", Severity::note,
        say(Text::tr("{0}: the belt, pulley and motor on the sheet give {1} steps per mm, inside U of "
                     "the measured {2}: the theoretical value is proposed."),
            axis, formatNumber(*theory), formatValue(measured)));
    return;
  }
  result.propose(id, measured);
}

}  // namespace

TravelScale scaleOf(const AxisRuns& runs, const Instrument& instrument) {
  const auto n = static_cast<Eigen::Index>(runs.moves.size());
  const Eigen::Index parameters = bothDirections(runs) ? 3 : 2;
  if (n < parameters) {
    throw Refusal{
        say(Text::tr("Moves: {0} moves of {1} are fewer than the {2} figures of a straight line with "
                     "reversal; enter {2} or more."),
            n, runs.axis, parameters),
        "moves"};
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
            runs.axis),
        "moves"};
  }
  const double span = runs.targets.back().target - runs.targets.front().target;
  const Contribution parts[] = {
      {fit->standardErrors()(1),
       fit->degreesOfFreedom > 0 ? fit->degreesOfFreedom : infiniteDegreesOfFreedom},
      {instrument.r / std::sqrt(12.0) * std::sqrt(fit->unscaledCovariance(1, 1))},
      {instrument.limitOfError(span) / std::sqrt(3.0) / span}};
  return {combinedQuantity(fit->coefficients(1), "1", parts)};
}

void giveScale(StepResult& result, const AxisRuns& runs, const Instrument& instrument,
               const StepContext& context) {
  const std::string& axis = runs.axis;
  const auto& key = keysOf<AxisTravelResults>();
  if (context.sheet.motion == "delta") {
    withholdScale(result, axis);
    return;
  }
  const Quantity ratio = scaleOf(runs, instrument).ratio;
  if (ratio.value <= *ratio.u) {
    throw Refusal{say(Text::tr("Moves: the measured positions of {0} do not rise with its targets (ratio "
                               "{1}); positions measured in the direction of the axis are needed."),
                      axis, formatFixed(ratio.value, 3)),
                  "moves"};
  }
  Quantity error = ratio;
  error.value -= 1;
  result.give(key.scaleError(axis), error);
  result.give(key.travelRatio(axis), ratio);
  const AxisDrive& sheet = driveOf(context.sheet, axis);
  const auto found = context.inForceNumber(key.stepsPerMmSetting(axis));
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
    result.withhold(key.stepsPerMm(axis), Text::tr("the steps per mm in force are not known"));
    return;
  }
  Quantity steps = plainQuantity(*found / ratio.value, "1/mm");
  steps.u = *ratio.u * steps.value / ratio.value;
  steps.dof = ratio.dof;
  result.give(key.stepsPerMm(axis), steps);
  proposeSteps(result, axis, steps, sheet);
}

}  // namespace fettle
