#include "core/maths/path_deviation.h"

#include <algorithm>
#include <cmath>

namespace fettle::maths {

double shaperDuration(const Shaper& shaper) {
  return shaper.impulses.back().time;
}

double shaperMeanTime(const Shaper& shaper) {
  double mean = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    mean += impulse.amplitude * impulse.time;
  }
  return mean;
}

double shaperVariance(const Shaper& shaper) {
  const double mean = shaperMeanTime(shaper);
  double variance = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    variance += impulse.amplitude * (impulse.time - mean) * (impulse.time - mean);
  }
  return variance;
}

double shaperMeanAbsoluteDeviation(const Shaper& shaper) {
  const double mean = shaperMeanTime(shaper);
  double deviation = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    deviation += impulse.amplitude * std::abs(impulse.time - mean);
  }
  return deviation;
}

double pathDeviation(const Shaper& shaper, double acceleration) {
  return 0.5 * acceleration * shaperVariance(shaper);
}

double accelerationLimit(const Shaper& shaper, double deviation) {
  return 2.0 * deviation / shaperVariance(shaper);
}

double cornerDeviation(const Shaper& shaper, double acceleration, double speed) {
  return 0.25 * acceleration * shaperVariance(shaper) + 0.5 * speed * shaperMeanAbsoluteDeviation(shaper);
}

double cornerSpeedLimit(const Shaper& shaper, double acceleration, double deviation) {
  const double left = deviation - cornerDeviation(shaper, acceleration, 0.0);
  return std::max(0.0, 2.0 * left / shaperMeanAbsoluteDeviation(shaper));
}

}  // namespace fettle::maths
