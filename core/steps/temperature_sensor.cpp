#include "core/steps/temperature_sensor.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/temperature_sensor/charts.h"
#include "core/steps/temperature_sensor/results.h"
#include "core/steps/temperature_sensor/search.h"

namespace fettle {
namespace {

constexpr double toleranceUpTo = 250;  // °C
constexpr double worthASearch = 2;     // °C of deviation beyond which the configured curve is asked for

Quantity deviationOf(const SensorPoint& point, const StepContext& context) {
  const Contribution parts[] = {{context.instrument("indicated_C").standardUncertainty(*point.indicated)},
                                {context.instrument("reference_C").standardUncertainty(*point.reference)}};
  return combinedQuantity(point.deviation(), "C", parts);
}

const SensorPoint& farthest(const std::vector<SensorPoint>& points) {
  return *std::max_element(points.begin(), points.end(), [](const SensorPoint& a, const SensorPoint& b) {
    return std::abs(a.deviation()) < std::abs(b.deviation());
  });
}

/// Gives the largest deviation; where points lie above 250 °C its verdict comes from the others.
void giveLargest(StepResult& result, const std::string& heater, const std::vector<SensorPoint>& points,
                 const StepContext& context, const Tolerance& tolerance) {
  const auto id = keysOf<TemperatureSensorResults>().largestDeviation(heater);
  result.give(id, deviationOf(farthest(points), context));
  noteSingleReading(result, Text::tr("The largest deviation"));
  std::vector<SensorPoint> judged;
  std::copy_if(points.begin(), points.end(), std::back_inserter(judged),
               [](const SensorPoint& point) { return *point.reference <= toleranceUpTo; });
  if (judged.size() == points.size()) {
    return;
  }
  if (judged.empty()) {
    result.judge(id, {}, {});
    result.addFinding("no-tolerance-above", Severity::note,
                      say(Text::tr("All points lie above {0} °C, where no tolerance is named."),
                          formatNumber(toleranceUpTo)));
    return;
  }
  const Quantity within = deviationOf(farthest(judged), context);
  result.judge(id, judge(within, tolerance), tolerance);
  result.addFinding(
      "no-tolerance-above", Severity::note,
      say(Text::tr("The verdict counts points up to {0} °C, where the largest deviation is {1} °C; above "
                   "no tolerance is named."),
          formatNumber(toleranceUpTo), formatValue(within)));
}

/// Gives `reference = offset + slope·indicated`.
maths::StraightLine giveLine(StepResult& result, const std::string& heater,
                             const std::vector<SensorPoint>& points, const StepContext& context) {
  std::vector<double> x, y;
  std::vector<std::size_t> rows;
  for (const auto& point : points) {
    x.push_back(*point.indicated);
    y.push_back(*point.reference);
    rows.push_back(point.number);
  }
  const auto [low, high] = std::minmax_element(x.begin(), x.end());
  const bool allAlike = *high - *low <= context.instrument("indicated_C").r * (1 + 1e-9);
  const auto line = maths::fitStraightLine(x, y);
  if (!line || allAlike) {
    throw Refusal{say(Text::tr("Points: all indications are {0} °C within the resolution; points "
                               "from room to working "
                               "temperature are needed."),
                      formatNumber(x.front())),
                  "points"};
  }
  const Instrument& reference = context.instrument("reference_C");
  const double common = reference.limitOfError(*std::max_element(y.begin(), y.end())) / std::sqrt(3.0);
  const double resolution =
      std::hypot(reference.r, line->slope * context.instrument("indicated_C").r) / std::sqrt(12.0);
  const double dof = line->degreesOfFreedom > 0 ? line->degreesOfFreedom : infiniteDegreesOfFreedom;
  const auto give = [&](const ResultId& id, double value, const char* unit, double error, double spread,
                        double shared) {
    const Contribution parts[] = {{error, dof}, {resolution * spread}, {shared}};
    result.give(id, combinedQuantity(value, unit, parts));
  };
  const auto& key = keysOf<TemperatureSensorResults>();
  give(key.offset(heater), line->intercept, "C", line->interceptStandardError(),
       std::sqrt(1 / line->sumOfWeights + line->meanX * line->meanX / line->sumOfSquaresX), common);
  give(key.slope(heater), line->slope, "1", line->slopeStandardError(), 1 / std::sqrt(line->sumOfSquaresX),
       common / (*high - *low));
  if (line->degreesOfFreedom == 0) {
    result.addFinding(
        "no-scatter", Severity::note,
        Text::tr("Two points: U of the line holds the instruments alone, not the scatter. A third point "
                 "would show it."));
  }
  // With fewer points the line bends itself to the one that is off: distances from it say nothing.
  if (line->degreesOfFreedom >= 3) {
    noteOutliers(result, line->residuals, rows, reference.r, Text::tr("the distance from the line,"), "C");
  }
  return *line;
}

std::optional<SensorCurve> configuredCurve(StepResult& result, const TemperatureSensorInputs& inputs,
                                           const StepContext& context, const std::string& heater) {
  if (inputs.configuredCurve == "own_beta") {
    for (const auto& [member, key] : {std::pair(inputs.ownR25, "r25_ohm"), {inputs.ownBeta, "beta_K"}}) {
      if (!member) {
        result.want({key});
      }
    }
    return inputs.ownR25 && inputs.ownBeta ? std::optional(ownBetaCurve(*inputs.ownR25, *inputs.ownBeta))
                                           : std::nullopt;
  }
  const std::string found = context.asFoundValue(heater + ".sensor_curve").text;
  const SensorCurve* curve =
      findSensorCurve(inputs.configuredCurve.empty() ? found : inputs.configuredCurve);
  return curve ? std::optional(*curve) : std::nullopt;
}

void nameCurve(StepResult& result, const std::string& heater, const SensorCurve& configured,
               const LikelyCurve& best, const std::vector<std::string>& others, double rms) {
  std::string text = say(
      Text::tr(
          "{0}: the sensor was read with the curve \"{1}\" (RMS {2} °C), but \"{3}\" fits: RMS {4} °C."),
      heaterName(heater), configured.label, formatFixed(rms, 1), best.curve.label,
      formatFixed(best.rms, 1));
  for (const auto& other : others) {
    text += " ";
    text += say(Text::tr("So does \"{0}\"."), other);
  }
  text += " ";
  text += Text::tr("Check the sensor's figures and the bias resistor before you change the configuration.");
  result.addFinding("wrong-curve", Severity::fault, text, "config-review");
  if (!best.isBias) {
    result.propose(keysOf<TemperatureSensorResults>().sensorCurve(heater), best.curve.label);
  }
}

/// Gives the factor of the bias resistor that would explain the points best, and the resistor itself.
void giveBias(StepResult& result, const std::string& heater, const LikelyCurve& bias,
              const SensorPicture& picture, const std::optional<double>& configured,
              const StepContext& context) {
  const auto& key = keysOf<TemperatureSensorResults>();
  const double error = context.instrument("reference_C").limitOfError(0);
  Quantity factor = biasFactor(bias, included(picture.points), *picture.configured, error);
  result.give(key.biasFactor(heater), factor);
  if (!configured) {
    result.wantFor(key.biasOhm(heater), {"bias_ohm"});
    return;
  }
  factor.value *= *configured;
  factor.u = factor.u.value_or(0) * *configured;
  factor.unit = "ohm";
  result.give(key.biasOhm(heater), factor);
}

void search(StepResult& result, const std::string& heater, const std::optional<double>& bias,
            SensorPicture& picture, const StepContext& context) {
  const auto points = included(picture.points);
  const double rms = configuredRms(points);
  std::vector<std::string> others;
  const LikelyCurve* best = nullptr;
  auto likely = likelyCurves(points, *picture.configured);
  likely.erase(std::remove_if(likely.begin(), likely.end(),
                              [&](const LikelyCurve& curve) { return curve.rms >= rms; }),
               likely.end());
  std::string list;
  for (const auto& curve : likely) {
    list += (list.empty() ? "" : "; ") +
            say(Text::tr("{0}: RMS {1} °C"), curve.curve.label, formatFixed(curve.rms, 1));
    if (maybeNamed(curve, rms)) {
      if (best) {
        others.push_back(curve.curve.label);
      } else {
        best = &curve;
      }
      if (curve.isBias) {
        giveBias(result, heater, curve, picture, bias, context);
      }
    }
  }
  result.give(keysOf<TemperatureSensorResults>().likelyCurves(heater),
              list.empty() ? Text::tr("none fits better than the configured one") : list);
  if (best) {
    nameCurve(result, heater, *picture.configured, *best, others, rms);
  }
  picture.likely = std::move(likely);
}

void noteRange(StepResult& result, const SensorCurve& curve, const std::vector<SensorPoint>& points) {
  for (const auto& point : points) {
    if (*point.indicated < curve.from || *point.indicated > curve.to) {
      result.addFinding(
          "outside-curve", Severity::caution,
          say(Text::tr("Points, row {0}: {1} °C lies outside {2} … {3} °C, for which the curve \"{4}\" is "
                       "known."),
              point.number, formatNumber(*point.indicated), formatNumber(curve.from),
              formatNumber(curve.to), curve.label));
    }
  }
}

/// The tolerance of the largest deviation, as the user may have changed it.
Tolerance toleranceOfDeviation(const StepContext& context, const std::string& heater) {
  static const Step step = temperatureSensorStep();
  return toleranceOf(step, context, heater + ".largest_deviation_C");
}

}  // namespace

StepResult evaluate(const TemperatureSensorInputs& inputs, const StepContext& context) {
  StepResult result;
  SensorPicture picture;
  picture.points = inputs.points;
  const auto points = included(inputs.points);
  for (const auto& point : points) {
    picture.expanded.push_back(expandedUncertainty(deviationOf(point, context)).value_or(0));
  }
  const std::string heater = inputs.heaterOf(context);
  if (heater.empty()) {
    result.want({"heater"});
  }
  picture.configured = configuredCurve(result, inputs, context, heater);
  picture.tolerance = toleranceOfDeviation(context, heater);
  if (heater.empty() || points.empty()) {
    result.charts = sensorCharts(picture);
    return result;
  }
  const auto& key = keysOf<TemperatureSensorResults>();
  inputs.noteOtherHeater(result, context);
  giveLargest(result, heater, points, context, picture.tolerance);
  if (points.size() < 2) {
    const std::string why =
        Text::tr("one point gives no line; enter two or more, from room to working temperature");
    result.withhold(key.offset(heater), why);
    result.withhold(key.slope(heater), why);
  } else {
    result.attempt({key.offset(heater), key.slope(heater)},
                   [&] { picture.line = giveLine(result, heater, points, context); });
  }
  if (picture.configured) {
    noteRange(result, *picture.configured, points);
    if (picture.line) {
      search(result, heater, inputs.bias, picture, context);
    }
  } else if (std::abs(farthest(points).deviation()) > worthASearch) {
    result.addFinding("curve-not-known", Severity::note,
                      Text::tr("Name the configured curve, and this step looks whether another one fits."));
  }
  result.charts = sensorCharts(picture);
  return result;
}

Step temperatureSensorStep() {
  Step step;
  step.key = "temperature-sensor";
  step.name = Text::tr("Temperature sensor");
  step.purpose = Text::tr("How true the sensor of a heater reads, and which curve it really follows.");
  step.stage = Stage::heat;
  step.subjectField = "heater";
  step.heats = true;
  step.caution = Text::tr("Hot parts burn at a touch. Stay with the machine while it heats.");
  step.benchMinutes = 15;
  step.waitMinutes = 30;
  step.emptyCharts = sensorCharts({});
  return describedStep<TemperatureSensorResults, TemperatureSensorInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
