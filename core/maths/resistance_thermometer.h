#pragma once
#include <optional>

namespace fettle::maths {

// Resistance in ohm, temperature in °C throughout. A temperature is none where the formula has no real one.

/// Industrial platinum thermometer of resistance r0 at 0 °C, Callendar–Van Dusen with the coefficients of
/// IEC 60751:2008: R = r0(1 + A t + B t²), below 0 °C + C(t − 100)t³. Valid from −200 to 850 °C.
double platinumResistance(double r0, double temperature);
/// Its inverse: closed form from 0 °C on, Newton's iteration below.
std::optional<double> platinumTemperature(double r0, double resistance);

/// Thermistor of resistance r25 at 25 °C by one constant, R = r25·exp(B(1/T − 1/298.15 K))
/// (IEC 60539-1, definition of the B value). Above absolute zero.
double betaResistance(double r25, double beta, double temperature);
std::optional<double> betaTemperature(double r25, double beta, double resistance);

/// Coefficients of 1/T = a + b ln R + c (ln R)³, T in kelvin (Steinhart and Hart 1968, Deep-Sea Research
/// 15, 497); c above 0.
struct SteinhartHart {
  double a = 0, b = 0, c = 0;
  /// Closed root of the cubic.
  double resistance(double temperature) const;
  std::optional<double> temperature(double resistance) const;
};

}  // namespace fettle::maths
