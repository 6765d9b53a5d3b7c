#include "core/maths/resistance_thermometer.h"

#include <cmath>

namespace fettle::maths {
namespace {

constexpr double kelvin = 273.15;
constexpr double a = 3.9083e-3, b = -5.775e-7, c = -4.183e-12;  // IEC 60751:2008

double platinumSlope(double r0, double t) {
  const double below = t < 0 ? c * (4 * t - 300) * t * t : 0;
  return r0 * (a + 2 * b * t + below);
}

/// °C of an inverse absolute temperature; none when it is not above zero.
std::optional<double> fromInverse(double inverseKelvin) {
  return inverseKelvin > 0 && std::isfinite(inverseKelvin) ? std::optional(1 / inverseKelvin - kelvin)
                                                           : std::nullopt;
}

}  // namespace

double platinumResistance(double r0, double temperature) {
  const double t = temperature;
  const double below = t < 0 ? c * (t - 100) * t * t * t : 0;
  return r0 * (1 + a * t + b * t * t + below);
}

std::optional<double> platinumTemperature(double r0, double resistance) {
  const double discriminant = a * a - 4 * b * (1 - resistance / r0);
  if (discriminant < 0) {
    return std::nullopt;
  }
  double t = (-a + std::sqrt(discriminant)) / (2 * b);
  if (t >= 0) {
    return t;
  }
  constexpr int iterations = 30;  // converges in four from the quadratic's root
  for (int i = 0; i < iterations; ++i) {
    const double step = (platinumResistance(r0, t) - resistance) / platinumSlope(r0, t);
    t -= step;
    if (std::abs(step) < 1e-12 * (1 + std::abs(t))) {
      break;
    }
  }
  return std::isfinite(t) && t > -kelvin ? std::optional(t) : std::nullopt;
}

double betaResistance(double r25, double beta, double temperature) {
  return r25 * std::exp(beta * (1 / (temperature + kelvin) - 1 / (25 + kelvin)));
}

std::optional<double> betaTemperature(double r25, double beta, double resistance) {
  return fromInverse(1 / (25 + kelvin) + std::log(resistance / r25) / beta);
}

double SteinhartHart::resistance(double temperature) const {
  const double half = (a - 1 / (temperature + kelvin)) / (2 * c);
  const double third = b / (3 * c);
  const double root = std::sqrt(third * third * third + half * half);
  return std::exp(std::cbrt(root - half) - std::cbrt(root + half));
}

std::optional<double> SteinhartHart::temperature(double resistance) const {
  const double logarithm = std::log(resistance);
  return fromInverse(a + b * logarithm + c * logarithm * logarithm * logarithm);
}

}  // namespace fettle::maths
