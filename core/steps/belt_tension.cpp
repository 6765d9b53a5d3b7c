#include "core/steps/belt_tension.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/belt_tension/charts.h"
#include "core/steps/belt_tension/readings.h"
#include "core/steps/belt_tension/results.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

constexpr double perFormula = 1e-9;  // g/m and mm² to kg/m and m²
constexpr double shortestSpan = 150, longestSpan = 400;
constexpr double equalSpan = 1;             // mm, twice what a steel rule resolves; no source
constexpr double allowedDifference = 0.10;  // common practice, no source

struct TensionedBelt {
  const BeltReadings* readings = nullptr;
  double length = 0;  ///< mm
  Quantity frequency;
  double random = 0;  ///< relative standard uncertainty of the tension, without what is common to all belts
  Quantity tension;
};

void withholdBelt(StepResult& result, const BeltReadings& belt) {
  const auto& key = keysOf<BeltTensionResults>();
  const std::string why =
      belt.refused ? belt.refused->sentence : Text::tr("no recording of this belt holds a tone");
  if (belt.refused) {
    result.refuse(*belt.refused);
    result.complete = false;
  }
  result.withhold(key.frequency(belt.named()), why);
  result.withhold(key.tension(belt.named()), why);
}

/// Gives the frequency of every belt that was heard; those with a mass and a span have a tension.
std::vector<TensionedBelt> tensioned(StepResult& result, const std::vector<BeltReadings>& belts,
                                     const BeltTensionInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<BeltTensionResults>();
  std::vector<TensionedBelt> strings;
  for (const auto& belt : belts) {
    if (belt.refused || belt.frequencies.empty()) {
      withholdBelt(result, belt);
      continue;
    }
    const auto length = belt.length ? belt.length : inputs.length;
    if (!length || !inputs.mass) {
      result.give(key.frequency(belt.named()), frequencyOf(belt, context.instrument("frequency_hz")));
      result.wantFor(key.tension(belt.named()), {length ? "mass_g_per_m" : "length_mm"});
      continue;
    }
    TensionedBelt string;
    string.readings = &belt;
    string.length = *length;
    string.frequency = frequencyOf(belt, context.instrument("frequency_hz"));
    Instrument withoutCommon = context.instrument("frequency_hz");
    withoutCommon.e = withoutCommon.relativeError = 0;
    const double span = belt.length ? context.instrument("length_mm").r / std::sqrt(12.0) / *length : 0;
    string.random = 2 * std::hypot(*frequencyOf(belt, withoutCommon).u / string.frequency.value, span);
    strings.push_back(string);
  }
  return strings;
}

Quantity tensionOf(const TensionedBelt& string, double mass, const StepContext& context) {
  const double f = string.frequency.value;
  const double tension = 4 * mass * string.length * string.length * f * f * perFormula;
  const Contribution parts[] = {
      {tension * context.instrument("mass_g_per_m").standardUncertainty(mass) / mass},
      {2 * tension * context.instrument("length_mm").standardUncertainty(string.length) / string.length},
      {2 * tension * *string.frequency.u / f, string.frequency.dof},
  };
  return combinedQuantity(tension, "N", parts);
}

void judgeTarget(StepResult& result, const BeltTensionInputs& inputs, const StepContext& context,
                 const BeltReadings& belt, const Quantity& tension) {
  const auto id = keysOf<BeltTensionResults>().tension(belt.named());
  if (!inputs.target || context.changedTolerance("belt-tension." + id.id)) {
    return;
  }
  const double allowed = inputs.targetWithin * *inputs.target;
  const Tolerance limit{*inputs.target - allowed, *inputs.target + allowed};
  const Judgement judgement = judge(tension, limit);
  result.judge(id, judgement, limit);
  if (judgement.tooCoarse) {
    result.addFinding(
        "instrument-too-coarse", Severity::caution,
        say(Text::tr("{0}: the guard bands of 2 × {1} N fill the tolerance of {2} N; no reading could "
                     "pass. Weigh the belt and pluck a longer span."),
            belt.name, formatPlain(judgement.guardBand), formatPlain(2 * allowed)));
  }
}

void noteBelt(StepResult& result, const TensionedBelt& string, const StepContext& context) {
  const BeltReadings& belt = *string.readings;
  if (string.length < shortestSpan || string.length > longestSpan) {
    result.addFinding(
        "span-length", Severity::caution,
        say(Text::tr("The span of {0} is {1} mm; {2} to {3} mm are wanted. A short span reads high, "
                     "because a belt is stiff and no string; a long one flaps."),
            belt.name, formatNumber(string.length), formatNumber(shortestSpan), formatNumber(longestSpan)));
  }
  if (belt.frequencies.size() == 1) {
    noteSingleReading(result, say(Text::tr("The tension of {0}"), belt.name));
  }
  noteOutliers(result, belt.frequencies, belt.rows, context.instrument("frequency_hz").r,
               say(Text::tr("{0},"), belt.name), "Hz");
}

void giveBelts(StepResult& result, std::vector<TensionedBelt>& strings, const BeltTensionInputs& inputs,
               const StepContext& context) {
  const auto& key = keysOf<BeltTensionResults>();
  for (auto& string : strings) {
    const BeltReadings& belt = *string.readings;
    string.tension = tensionOf(string, *inputs.mass, context);
    result.give(key.frequency(belt.named()), string.frequency);
    result.give(key.tension(belt.named()), string.tension);
    judgeTarget(result, inputs, context, belt, string.tension);
    noteBelt(result, string, context);
  }
}

/// Difference over mean of two belts on one motion.
Quantity differenceOf(const TensionedBelt& one, const TensionedBelt& other) {
  const double first = one.tension.value, second = other.tension.value, sum = first + second;
  const double perShare = 4 * first * second / (sum * sum);  // dD = this · (dT1/T1 − dT2/T2)
  const Contribution parts[] = {{perShare * one.random, one.frequency.dof},
                                {perShare * other.random, other.frequency.dof}};
  return combinedQuantity(2 * (first - second) / sum, "1", parts);
}

void giveDifference(StepResult& result, const TensionedBelt& one, const TensionedBelt& other,
                    const StepContext& context, TensionPicture& picture) {
  const ResultId id = keysOf<BeltTensionResults>().difference;
  const std::string& name = one.readings->name;
  const std::string& otherName = other.readings->name;
  if (std::abs(one.length - other.length) > equalSpan) {
    result.withhold(id, say(Text::tr("the spans of {0} and {1} differ, {2} and {3} mm: pluck equal spans"),
                            name, otherName, formatNumber(one.length), formatNumber(other.length)));
    return;
  }
  const Quantity difference = differenceOf(one, other);
  result.give(id, difference);
  const Tolerance allowed = context.changedTolerance("belt-tension.tension_difference")
                                .value_or(Tolerance{-allowedDifference, allowedDifference});
  if (allowed.high) {  // two values differ by 10 % of their mean when each is 5 % away from it
    const double mean = (one.tension.value + other.tension.value) / 2, half = *allowed.high / 2 * mean;
    picture.wanted.push_back({say(Text::tr("{0} % of their mean"), formatNumber(100 * *allowed.high)),
                              mean - half, mean + half, false});
  }
  if (difference.value > allowed.high.value_or(difference.value) ||
      difference.value < allowed.low.value_or(difference.value)) {
    result.addFinding(
        "belts-unequal", Severity::caution,
        say(Text::tr("{0} has {1} N and {2} has {3} N, {4} % apart: on crossed belts that pulls the "
                     "gantry out of square. Even them out and pluck again."),
            name, formatFixed(one.tension.value, 1), otherName, formatFixed(other.tension.value, 1),
            formatFixed(100 * std::abs(difference.value), 0)));
  }
}

/// The two belts of a crossed-belt motion; a belt named z drives another axis.
void compareBelts(StepResult& result, const std::vector<TensionedBelt>& strings, const StepContext& context,
                  TensionPicture& picture) {
  if (context.sheet.motion != "crossed-belt") {
    return;
  }
  std::vector<const TensionedBelt*> pair;
  for (const auto& string : strings) {
    if (string.readings->id != "z") {
      pair.push_back(&string);
    }
  }
  if (pair.size() == 2) {
    giveDifference(result, *pair[0], *pair[1], context, picture);
  } else {
    result.withhold(keysOf<BeltTensionResults>().difference,
                    say(Text::tr("a crossed-belt motion has two belts; measured: {0}"), pair.size()));
  }
}

TensionPicture pictureOf(const std::vector<TensionedBelt>& strings, const BeltTensionInputs& inputs,
                         const StepContext& context) {
  TensionPicture picture;
  bool targetJudges = inputs.target.has_value();
  for (const auto& string : strings) {
    picture.belts.push_back(string.readings->name);
    picture.tensions.push_back(string.tension);
    targetJudges =
        targetJudges && !context.changedTolerance("belt-tension." + string.readings->id + ".tension_N");
  }
  if (targetJudges) {
    picture.wanted.push_back({say(Text::tr("target {0} N ± {1} %"), formatNumber(*inputs.target),
                                  formatNumber(100 * inputs.targetWithin)),
                              (1 - inputs.targetWithin) * *inputs.target,
                              (1 + inputs.targetWithin) * *inputs.target, false});
  }
  return picture;
}

void noteCommonPractice(StepResult& result, const StepContext& context) {
  const Instrument& mass = context.instrument("mass_g_per_m");
  result.addFinding(
      "belt-mass", Severity::note,
      say(Text::tr("The mass of the belt counts with {0}. Printed figures differ; weigh a known length "
                   "and enter what its mass is uncertain by."),
          mass.relativeError > 0
              ? say(Text::tr("{0} % limit of error"), formatNumber(100 * mass.relativeError))
              : say(Text::tr("{0} g/m limit of error"), formatNumber(mass.e))));
}

}  // namespace

StepResult evaluate(const BeltTensionInputs& inputs, const StepContext& context) {
  StepResult result;
  std::vector<HeardPitch> heard;
  if (inputs.searchFrom < inputs.searchTo) {
    heard = heardPitches(result, inputs.recordings, inputs.searchFrom, inputs.searchTo);
  } else if (inputs.searchFrom >= inputs.searchTo) {
    result.refuse({say(Text::tr("Search from {0} Hz to {1} Hz: to must be above from."),
                       formatNumber(inputs.searchFrom), formatNumber(inputs.searchTo)),
                   "search_to_hz"});
  }
  const auto belts = beltsOf(inputs.plucks, inputs.recordings, heard, context.instrument("frequency_hz"));
  auto strings = tensioned(result, belts, inputs, context);
  TensionPicture picture;
  if (!strings.empty()) {
    giveBelts(result, strings, inputs, context);
    picture = pictureOf(strings, inputs, context);
    compareBelts(result, strings, context, picture);
    noteCommonPractice(result, context);
  }
  result.charts = beltTensionCharts(picture, belts, heard);
  return result;
}

Step beltTensionStep() {
  Step step;
  step.key = "belt-tension";
  step.name = Text::tr("Belt tension");
  step.purpose = Text::tr("How tight each belt is, from the note of a free span.");
  step.stage = Stage::motion;
  step.caution =
      Text::tr("Power off and unplugged. Hold the motor by hand, keep fingers out of the pulleys.");
  step.benchMinutes = 10;
  step.readsSheet = {"motion"};
  step.emptyCharts = beltTensionCharts({}, {}, {});
  return describedStep<BeltTensionResults, BeltTensionInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
