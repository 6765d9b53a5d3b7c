#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/heaters.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// What the controller showed and what the reference thermometer showed beside it.
struct SensorPoint : TableRow {
  std::optional<double> indicated, reference;
  void describe(FieldList& columns);
  double deviation() const { return *indicated - *reference; }
};

struct TemperatureSensorInputs : HeaterInput {
  std::vector<SensorPoint> points;
  std::string configuredCurve;            ///< key of the catalogue, "own_beta", or "" while not known
  std::optional<double> ownR25, ownBeta;  ///< of "own_beta"
  std::optional<double> bias;             ///< configured bias resistor, ohm
  void describe(FieldList& fields);
};

/// How true a temperature sensor reads, and what is wrong when it does not.
///
/// Deviation = indicated − reference; `<heater>.largest_deviation_C` keeps its sign. Its verdict counts
/// readings up to 250 °C only, above no tolerance is named. `reference = offset_C + slope·indicated` by
/// least squares; the reference's limit of error is common: e/√3 in the offset, e/√3 over the span in the
/// slope. Wrong curve: see temperature_sensor/search.h. Outliers about the line
/// are marked from five points on. Refused: fewer than two points, all indications equal within the
/// resolution.
StepResult evaluate(const TemperatureSensorInputs& inputs, const StepContext& context);

Step temperatureSensorStep();

}  // namespace fettle
