#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/maths/resistance_thermometer.h"

namespace fettle {

/// How a sensor's resistance follows its temperature.
struct SensorCurve {
  enum class Kind { platinum, beta, steinhartHart };
  std::string key, label, source;
  Kind kind = Kind::platinum;
  double nominal = 100;  ///< ohm at 0 °C of platinum, at 25 °C of thermistors
  double beta = 0;       ///< K
  maths::SteinhartHart coefficients;
  double from = -200, to = 850;  ///< °C in which the curve is meant

  double resistance(double temperature) const;                 ///< ohm
  std::optional<double> temperature(double resistance) const;  ///< °C; none where there is none
};

/// The curves of a table as in resources/tables/sensor_curves.txt, which explains the form. Throws
/// std::invalid_argument with the line that cannot be read.
std::vector<SensorCurve> sensorCurvesFrom(std::string_view table);

/// The catalogue that comes with the program.
const std::vector<SensorCurve>& sensorCurves();

/// The curve of that key or label, or null.
const SensorCurve* findSensorCurve(const std::string& name);

/// A thermistor by resistance at 25 °C and B.
SensorCurve ownBetaCurve(double r25, double beta);

}  // namespace fettle
