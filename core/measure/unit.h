#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace fettle {

/// What a number measures; units of one dimension convert into each other.
enum class Dimension {
  ratio,
  time,
  length,
  area,
  volume,
  speed,
  acceleration,
  frequency,
  temperature,
  mass,
  linearDensity,
  density,
  current,
  voltage,
  resistance,
  power,
  force,
  volumeFlow,
  angle,
  slope,
  stepsPerLength,
  temperatureRate,
  specificHeat,
  volumePerLength,
  lengthPerTemperature,
  gainPerTemperature,  ///< controller output, 0 to 1 or full scale, per °C
  integralGain,        ///< the same for each second
  derivativeGain,
};

/// One unit. Value in the first unit of the dimension = value · multiply / divide + offset.
/// Two integers instead of one factor keep 632 us at exactly the double nearest to 0.000632 s.
struct Unit {
  std::string_view key;  ///< ASCII word, as in files: "mm/s2", "gn", "C", "ohm", "1"
  Dimension dimension;
  double multiply = 1.0;
  double divide = 1.0;
  double offset = 0.0;
};

/// All units of a dimension, the fixed unit of the program first.
std::vector<Unit> unitsOf(Dimension dimension);

/// The keys of a dimension as words for a sentence: "mm/s2, m/s2, gn, mgn".
std::string unitWords(Dimension dimension);

/// The unit meant by a word in any usual spelling: "[ms]", "µs", "mm/s²", "°C", "m/s^2", "Ω", "percent".
/// With `column` only units of that dimension answer, and `g` and `mg` in acceleration columns mean
/// standard gravity, 9.80665 m/s² (ISO 80000-3); elsewhere g is gram.
/// "clock" is a time written as hh:mm:ss, whose value is in seconds once it is read.
std::optional<Unit> unitFromText(std::string_view text, std::optional<Dimension> column = std::nullopt);

/// Converts a value from one unit to another by their words; `g` is read by the other one's dimension.
/// @return the value, or one sentence when a word is unknown or the dimensions differ
tl::expected<double, std::string> convert(double value, std::string_view from, std::string_view to);
double convert(double value, const Unit& from, const Unit& to);

/// How a unit key is shown on screens and in the report: "mm³/s", "°C", "mm/s²", "Ω", "mm/100 mm",
/// "1/(°C·s)"; the unit of a plain number shows as nothing.
std::string displayUnit(std::string_view key);

/// A value with its unit behind it; the value alone when it is blank or the unit shows as nothing.
std::string withUnit(const std::string& value, std::string_view unit);

}  // namespace fettle
