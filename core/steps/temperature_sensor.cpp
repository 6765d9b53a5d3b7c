#include "core/steps/temperature_sensor.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/temperature_sensor/charts.h"
#include "core/steps/temperature_sensor/search.h"

namespace fettle {
namespace {

constexpr double toleranceUpTo = 250;  // °C
constexpr double worthASearch = 2;     // °C of deviation beyond which the configured curve is asked for

Instrument indication() {
  return {Text::tr("indication of the controller"), 0.1, 0, 0, "C"};
}

std::vector<Choice> curveChoices() {
  std::vector<Choice> choices;
  for (const auto& curve : sensorCurves()) {
    choices.push_back({curve.key, curve.label});
  }
  choices.push_back({"own_beta", Text::tr("another NTC, by R25 and B")});
  return choices;
}

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
  const std::string id = heater + ".largest_deviation_C";
  result.give(id, deviationOf(farthest(points), context));
  noteSingleReading(result, Text::tr("The largest deviation"));
  std::vector<SensorPoint> judged;
  std::copy_if(points.begin(), points.end(), std::back_inserter(judged),
               [](const SensorPoint& point) { return *point.reference <= toleranceUpTo; });
  if (judged.size() == points.size()) {
    return;
  }
  if (judged.empty()) {
    result.judgements.push_back({id, Verdict::none, {}, 0});
    result.addFinding("no-tolerance-above", Severity::note,
                      say(Text::tr("All points lie above {0} °C, where no tolerance is named."),
                          formatNumber(toleranceUpTo)));
    return;
  }
  const Quantity within = deviationOf(farthest(judged), context);
  result.judgements.push_back({id, judge(within, tolerance).verdict, {}, 0});
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
  if (points.size() < 2 || !line || allAlike) {
    throw Refusal{points.size() < 2
                      ? Text::tr("Points: one point gives no line; enter two or more, from room to working "
                                 "temperature.")
                      : say(Text::tr("Points: all indications are {0} °C within the resolution; points "
                                     "from room to working "
                                     "temperature are needed."),
                            formatNumber(x.front()))};
  }
  const Instrument& reference = context.instrument("reference_C");
  const double common = reference.limitOfError(*std::max_element(y.begin(), y.end())) / std::sqrt(3.0);
  const double resolution =
      std::hypot(reference.r, line->slope * context.instrument("indicated_C").r) / std::sqrt(12.0);
  const double dof = line->degreesOfFreedom > 0 ? line->degreesOfFreedom : infiniteDegreesOfFreedom;
  const auto give = [&](const char* id, double value, const char* unit, double error, double spread,
                        double shared) {
    const Contribution parts[] = {{error, dof}, {resolution * spread}, {shared}};
    result.give(heater + id, combinedQuantity(value, unit, parts));
  };
  give(".offset_C", line->intercept, "C", line->interceptStandardError(),
       std::sqrt(1 / line->sumOfWeights + line->meanX * line->meanX / line->sumOfSquaresX), common);
  give(".slope", line->slope, "1", line->slopeStandardError(), 1 / std::sqrt(line->sumOfSquaresX),
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
        result.missing.emplace_back(key);
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
               const LikelyCurve& best, const std::vector<std::string>& others, double rms,
               const StepContext& context) {
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
    const std::string id = heater + ".sensor_curve";
    result.proposeWord(id, context.asFoundValue(id), best.curve.label);
  }
}

/// Gives the factor of the bias resistor that would explain the points best, and the resistor itself.
void giveBias(StepResult& result, const std::string& heater, const LikelyCurve& bias,
              const SensorPicture& picture, const std::optional<double>& configured,
              const StepContext& context) {
  const double error = context.instrument("reference_C").limitOfError(0);
  Quantity factor = biasFactor(bias, included(picture.points), *picture.configured, error);
  result.give(heater + ".bias_factor", factor);
  if (!configured) {
    result.withhold(heater + ".bias_ohm", "ohm", Text::tr("the configured bias resistor is not entered"));
    return;
  }
  factor.value *= *configured;
  factor.u = factor.u.value_or(0) * *configured;
  factor.unit = "ohm";
  result.give(heater + ".bias_ohm", factor);
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
  result.say(heater + ".likely_curves",
             list.empty() ? Text::tr("none fits better than the configured one") : list);
  if (best) {
    nameCurve(result, heater, *picture.configured, *best, others, rms, context);
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

void SensorPoint::describe(FieldList& columns) {
  columns.number("indicated_C", indicated, Text::tr("Indicated"), "C")
      .bounds(-100, 900)
      .required()
      .help(Text::tr("What the machine shows."))
      .readWith(indication())
      .alsoNamed({"indicated", "shown"});
  columns.number("reference_C", reference, Text::tr("Reference"), "C")
      .bounds(-100, 900)
      .required()
      .help(Text::tr("What the reference thermometer shows at the same place."))
      .readWith(instruments::referenceThermometer())
      .alsoNamed({"reference", "thermometer"});
}

void TemperatureSensorInputs::describe(FieldList& fields) {
  describeHeater(fields);
  fields.table("points", points, Text::tr("Points"))
      .required()
      .help(Text::tr("Five steady temperatures or more, from room to working temperature."));
  fields.choice("configured_curve", configuredCurve, Text::tr("Configured curve"), curveChoices())
      .help(Text::tr("By which the controller turns resistance into temperature; blank: as found."));
  fields.number("r25_ohm", ownR25, Text::tr("Resistance at 25 °C"), "ohm")
      .bounds(10, 1e7)
      .onlyWhen("configured_curve", {"own_beta"});
  fields.number("beta_K", ownBeta, Text::tr("B in kelvin"), "1")
      .bounds(1000, 8000)
      .onlyWhen("configured_curve", {"own_beta"});
  fields.number("bias_ohm", bias, Text::tr("Configured bias resistor"), "ohm")
      .bounds(1, 1e6)
      .help(Text::tr("In series with the sensor, as the controller counts it."));
}

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
    result.missing.emplace_back("heater");
  }
  if (points.empty()) {
    result.missing.emplace_back("points");
  }
  picture.configured = configuredCurve(result, inputs, context, heater);
  picture.tolerance = toleranceOfDeviation(context, heater);
  if (!result.missing.empty()) {
    result.charts = sensorCharts(picture);
    return result;
  }
  inputs.noteOtherHeater(result, context);
  picture.line = giveLine(result, heater, points, context);
  giveLargest(result, heater, points, context, picture.tolerance);
  if (picture.configured) {
    noteRange(result, *picture.configured, points);
    search(result, heater, inputs.bias, picture, context);
  } else if (std::abs(farthest(points).deviation()) > worthASearch) {
    result.addFinding("curve-not-known", Severity::note,
                      Text::tr("Name the configured curve, and this step looks whether another one fits."));
  }
  result.charts = sensorCharts(picture);
  return result;
}

Step temperatureSensorStep() {
  const Tolerance deviation{-5.0, 5.0};  // common practice, no source
  Step step;
  step.key = "temperature-sensor";
  step.name = Text::tr("Temperature sensor");
  step.purpose = Text::tr("How true the sensor of a heater reads, and which curve it really follows.");
  step.stage = Stage::heat;
  step.subjectField = "heater";
  step.heats = true;
  step.caution = Text::tr("Hot parts burn at a touch. Stay with the machine while it heats.");
  step.headline = {"<heater>.largest_deviation_C"};
  step.results = {
      {"<heater>.largest_deviation_C", "C", Text::tr("Largest deviation"), deviation, true},
      {"<heater>.offset_C", "C", Text::tr("Offset")},
      {"<heater>.slope", "1", Text::tr("Slope")},
      {"<heater>.bias_factor", "1", Text::tr("Real / configured bias resistor")},
      {"<heater>.bias_ohm", "ohm", Text::tr("Bias resistor that would fit")},
      {"<heater>.likely_curves", "", Text::tr("Curves that fit better")},
  };
  step.settings = {{"<heater>.sensor_curve", Text::tr("Sensor curve"), ""}};
  step.emptyCharts = sensorCharts({});
  return withInputs<TemperatureSensorInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
