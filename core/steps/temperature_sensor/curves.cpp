#include "core/steps/temperature_sensor/curves.h"

#include <algorithm>
#include <stdexcept>

#include "core/measure/format.h"
#include "core/measure/number_text.h"
#include "core/measure/text.h"
#include "sensorCurvesText.h"

namespace fettle {
namespace {

constexpr std::size_t cellsPerLine = 10;

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t end = text.find(separator);
    parts.push_back(trimmed(text.substr(0, end)));
    if (end == text.npos) {
      return parts;
    }
    text.remove_prefix(end + 1);
  }
}

double numberIn(std::string_view cell, std::string_view line) {
  const auto number = numberFromText(cell);
  if (!number) {
    throw std::invalid_argument("a number is missing in the sensor curve: " + std::string(line));
  }
  return *number;
}

SensorCurve curveFrom(std::string_view line) {
  const auto cells = split(line, '|');
  if (cells.size() != cellsPerLine) {
    throw std::invalid_argument("a sensor curve needs 10 cells: " + std::string(line));
  }
  SensorCurve curve;
  curve.key = cells[0];
  curve.nominal = numberIn(cells[2], line);
  if (cells[1] == "beta") {
    curve.kind = SensorCurve::Kind::beta;
    curve.beta = numberIn(cells[3], line);
  } else if (cells[1] == "steinhart-hart") {
    curve.kind = SensorCurve::Kind::steinhartHart;
    curve.coefficients = {numberIn(cells[3], line), numberIn(cells[4], line), numberIn(cells[5], line)};
  } else if (cells[1] != "platinum") {
    throw std::invalid_argument("unknown kind of sensor curve: " + std::string(line));
  }
  curve.from = numberIn(cells[6], line);
  curve.to = numberIn(cells[7], line);
  curve.label = cells[8];
  curve.source = cells[9];
  return curve;
}

}  // namespace

double SensorCurve::resistance(double temperature) const {
  switch (kind) {
    case Kind::beta:
      return maths::betaResistance(nominal, beta, temperature);
    case Kind::steinhartHart:
      return coefficients.resistance(temperature);
    case Kind::platinum:
      break;
  }
  return maths::platinumResistance(nominal, temperature);
}

std::optional<double> SensorCurve::temperature(double resistance) const {
  if (!(resistance > 0)) {
    return std::nullopt;
  }
  switch (kind) {
    case Kind::beta:
      return maths::betaTemperature(nominal, beta, resistance);
    case Kind::steinhartHart:
      return coefficients.temperature(resistance);
    case Kind::platinum:
      break;
  }
  return maths::platinumTemperature(nominal, resistance);
}

std::vector<SensorCurve> sensorCurvesFrom(std::string_view table) {
  std::vector<SensorCurve> curves;
  for (const auto line : split(table, '\n')) {
    if (!line.empty() && line.front() != '#') {
      curves.push_back(curveFrom(line));
    }
  }
  return curves;
}

const std::vector<SensorCurve>& sensorCurves() {
  static const std::vector<SensorCurve> curves = sensorCurvesFrom(sensorCurvesText);
  return curves;
}

const SensorCurve* findSensorCurve(const std::string& name) {
  const auto& curves = sensorCurves();
  const auto found = std::find_if(curves.begin(), curves.end(), [&](const SensorCurve& curve) {
    return curve.key == name || curve.label == name;
  });
  return found == curves.end() ? nullptr : &*found;
}

SensorCurve ownBetaCurve(double r25, double beta) {
  SensorCurve curve;
  curve.key = "own_beta";
  curve.kind = SensorCurve::Kind::beta;
  curve.nominal = r25;
  curve.beta = beta;
  curve.from = -55;
  curve.to = 400;
  curve.label = say(Text::tr("NTC {0} Ω, B {1} K"), formatNumber(r25), formatNumber(beta));
  return curve;
}

}  // namespace fettle
