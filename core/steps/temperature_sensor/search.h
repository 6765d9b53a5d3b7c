#pragma once
#include <optional>
#include <vector>

#include "core/measure/uncertainty.h"
#include "core/steps/temperature_sensor/curves.h"
#include "core/steps/temperature_sensor/inputs.h"

namespace fettle {

/// The resistance the sensor had, as a controller with this curve must have measured it, read by another
/// curve or with another bias resistor.
struct LikelyCurve {
  SensorCurve curve;
  double factor = 1;  ///< on the resistance; only a wrong bias resistor has another than 1
  bool isBias = false;
  double rms = 0;  ///< °C, of shown − reference
  /// What would have been shown where the configured curve showed this; none where the curve has nothing.
  std::optional<double> shownFor(const SensorCurve& configured, double indicated) const;
};

/// Root mean square of indicated − reference.
double configuredRms(const std::vector<SensorPoint>& points);

/// Every curve of the catalogue but the configured one that covers all points, and the configured curve
/// with a free factor 0.2 to 5 on resistance: a bias resistor other than configured scales every resistance
/// a divider gives, so factor = real/configured resistor. Best first. The factor costs a degree of freedom:
/// its RMS is divided by n − 1.
std::vector<LikelyCurve> likelyCurves(const std::vector<SensorPoint>& points,
                                      const SensorCurve& configured);

/// The factor with its uncertainty: scatter about the curve, and the limit of error of the reference common
/// to all points (linearised in ln factor).
Quantity biasFactor(const LikelyCurve& bias, const std::vector<SensorPoint>& points,
                    const SensorCurve& configured, double limitOfError);

/// Whether a curve may be named: RMS under 2 °C and three times better than the configured one, which
/// misses those 2 °C itself: a free factor fits the error of any thermometer a little better than a right
/// curve.
bool maybeNamed(const LikelyCurve& curve, double rmsConfigured);

}  // namespace fettle
