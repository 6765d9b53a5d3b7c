#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/heaters.h"

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

}  // namespace fettle
