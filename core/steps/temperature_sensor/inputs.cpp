#include "core/steps/temperature_sensor/inputs.h"

#include "core/measure/text.h"
#include "core/steps/temperature_sensor/curves.h"

namespace fettle {
namespace {

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
      .carriesOver()
      .help(Text::tr("By which the controller turns resistance into temperature; blank: as found."));
  fields.number("r25_ohm", ownR25, Text::tr("Resistance at 25 °C"), "ohm")
      .bounds(10, 1e7)
      .carriesOver()
      .onlyWhen("configured_curve", {"own_beta"});
  fields.number("beta_K", ownBeta, Text::tr("B in kelvin"), "1")
      .bounds(1000, 8000)
      .carriesOver()
      .onlyWhen("configured_curve", {"own_beta"});
  fields.number("bias_ohm", bias, Text::tr("Configured bias resistor"), "ohm")
      .bounds(1, 1e6)
      .carriesOver()
      .help(Text::tr("In series with the sensor, as the controller counts it."));
}

}  // namespace fettle
