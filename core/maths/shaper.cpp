#include "core/maths/shaper.h"

#include <cmath>
#include <numbers>

#include "core/maths/ei_family.h"

namespace fettle::maths {
namespace {

/// Amplitudes proportional to the binomial coefficients of `order` times powers of K, half a period apart:
/// each order makes one more derivative zero.
ShaperShape zeroVibration(int order, double damping) {
  const double ratio = std::exp(-damping * std::numbers::pi / std::sqrt(1.0 - damping * damping));
  ShaperShape shape{{}, damping};
  double amplitude = std::pow(1.0 + ratio, -order);
  for (int i = 0; i <= order; ++i) {
    shape.impulses.push_back({amplitude, 0.5 * i});
    amplitude *= ratio * (order - i) / (i + 1);
  }
  return shape;
}

}  // namespace

std::string_view shaperKey(ShaperKind kind) {
  switch (kind) {
    case ShaperKind::zv:
      return "zv";
    case ShaperKind::zvd:
      return "zvd";
    case ShaperKind::zvdd:
      return "zvdd";
    case ShaperKind::ei:
      return "ei";
    case ShaperKind::eiTwoHump:
      return "ei_two_hump";
    case ShaperKind::eiThreeHump:
      return "ei_three_hump";
  }
  return "";
}

Expected<ShaperShape> shaperShape(ShaperKind kind, double damping, double tolerance) {
  if (!(damping >= 0.0 && damping <= 0.5)) {
    return failure("a shaper needs a damping ratio from 0 to 0.5");
  }
  switch (kind) {
    case ShaperKind::zv:
      return zeroVibration(1, damping);
    case ShaperKind::zvd:
      return zeroVibration(2, damping);
    case ShaperKind::zvdd:
      return zeroVibration(3, damping);
    case ShaperKind::ei:
      return extraInsensitive(1, damping, tolerance);
    case ShaperKind::eiTwoHump:
      return extraInsensitive(2, damping, tolerance);
    case ShaperKind::eiThreeHump:
      return extraInsensitive(3, damping, tolerance);
  }
  return failure("there is no such shaper");
}

Shaper scaledShaper(const ShaperShape& shape, double frequency) {
  const double period = 1.0 / (frequency * std::sqrt(1.0 - shape.damping * shape.damping));
  Shaper shaper{shape.impulses, frequency, shape.damping};
  for (Impulse& impulse : shaper.impulses) {
    impulse.time *= period;
  }
  return shaper;
}

}  // namespace fettle::maths
