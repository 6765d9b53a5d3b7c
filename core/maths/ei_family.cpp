#include "core/maths/ei_family.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <optional>

namespace fettle::maths {
namespace {

using Complex = std::complex<double>;
using Eigen::Index;
using Eigen::VectorXd;

/// What is unknown, in this order: amplitudes, times but the first, frequency ratios of the free zeros, of
/// the free humps.
struct Layout {
  int humps = 0;
  Index impulses = 0;
  Index freeTimes = 0;
  Index freeZeros = 0;
  Index freeHumps = 0;

  Index unknowns() const { return impulses + freeTimes + freeZeros + freeHumps; }
  VectorXd amplitudes(const VectorXd& x) const { return x.head(impulses); }
  /// In damped periods.
  VectorXd times(const VectorXd& x) const {
    VectorXd times = VectorXd::Zero(impulses);
    times.segment(1, freeTimes) = x.segment(impulses, freeTimes);
    if (humps == 1) {
      times[2] = 1.0;
    }
    return times;
  }
  VectorXd zeros(const VectorXd& x) const { return x.segment(impulses + freeTimes, freeZeros); }
  VectorXd humpsAt(const VectorXd& x) const { return x.tail(freeHumps); }
};

Layout layoutOf(int humps) {
  switch (humps) {
    case 1:
      return {1, 3, 1, 2, 0};
    case 2:
      return {2, 4, 3, 2, 2};
    default:
      return {3, 5, 4, 4, 2};
  }
}

/// Q with |Q(r)| = V(r), the residual vibration at the frequency ratio r, and dQ/dr.
struct Vibration {
  Complex value;
  Complex slope;
};

Vibration vibration(const VectorXd& amplitudes, const VectorXd& times, double ratio, double decay) {
  Vibration sum;
  const double last = times[times.size() - 1];
  for (Index i = 0; i < times.size(); ++i) {
    const Complex rate = 2.0 * std::numbers::pi * Complex(decay * (times[i] - last), times[i]);
    const Complex term = amplitudes[i] * std::exp(rate * ratio);
    sum.value += term;
    sum.slope += rate * term;
  }
  return sum;
}

/// The constraint equations, all 0 at a solution. `point` holds the unknowns and, last, the damping.
VectorXd constraints(const Layout& layout, const VectorXd& point, double tolerance) {
  const VectorXd x = point.head(layout.unknowns());
  const double damping = point[layout.unknowns()];
  const double decay = damping / std::sqrt(1.0 - damping * damping);
  const VectorXd amplitudes = layout.amplitudes(x);
  const VectorXd times = layout.times(x);
  VectorXd equations(layout.unknowns());
  Index row = 0;
  const auto zero = [&](double ratio) {
    const Complex value = vibration(amplitudes, times, ratio, decay).value;
    equations[row++] = value.real();
    equations[row++] = value.imag();
  };
  const auto level = [&](double ratio) {
    equations[row++] = std::norm(vibration(amplitudes, times, ratio, decay).value) - tolerance * tolerance;
  };
  const auto summit = [&](double ratio) {
    const Vibration at = vibration(amplitudes, times, ratio, decay);
    equations[row++] = std::real(std::conj(at.value) * at.slope);
  };
  equations[row++] = amplitudes.sum() - 1.0;
  for (const double ratio : layout.zeros(x)) {
    zero(ratio);
  }
  for (const double ratio : layout.humpsAt(x)) {
    level(ratio);
    summit(ratio);
  }
  if (layout.humps == 2) {
    zero(1.0);
  } else {
    level(1.0);
  }
  if (layout.humps == 3) {
    summit(1.0);
  }
  return equations;
}

/// Derivatives of the constraints, one column more than rows. Central differences: good to 1e-10, so
/// Newton's method still gains digits fast.
Eigen::MatrixXd jacobianOf(const Layout& layout, const VectorXd& point, double tolerance) {
  constexpr double step = 1e-6;
  Eigen::MatrixXd jacobian(layout.unknowns(), point.size());
  for (Index column = 0; column < point.size(); ++column) {
    VectorXd up = point;
    VectorXd down = point;
    up[column] += step;
    down[column] -= step;
    jacobian.col(column) =
        (constraints(layout, up, tolerance) - constraints(layout, down, tolerance)) / (2.0 * step);
  }
  return jacobian;
}

/// Newton's method for the constraints within the plane through `point` across `normal`; nothing when it
/// does not converge.
std::optional<VectorXd> solve(const Layout& layout, VectorXd point, const VectorXd& normal,
                              double tolerance) {
  constexpr int mostIterations = 8;
  constexpr double converged = 1e-13;  // humps then differ from V by less than 1e-11
  for (int iteration = 0; iteration < mostIterations; ++iteration) {
    const VectorXd equations = constraints(layout, point, tolerance);
    if (!equations.allFinite()) {
      return std::nullopt;
    }
    if (equations.cwiseAbs().maxCoeff() < converged) {
      return point;
    }
    Eigen::MatrixXd system(point.size(), point.size());
    system << jacobianOf(layout, point, tolerance), normal.transpose();
    VectorXd right = VectorXd::Zero(point.size());
    right.head(equations.size()) = equations;
    point -= system.fullPivLu().solve(right);
  }
  return std::nullopt;
}

/// Frequency ratios 1 ∓ d where cos(πr) takes the value `cosine`, below 1 first.
Eigen::Vector2d ratiosAtCosine(double cosine) {
  const double below = std::acos(cosine) / std::numbers::pi;
  return {below, 2.0 - below};
}

/// Closed forms for ζ = 0, all of which are symmetric in r about 1 (Singhose, Porter, Tuttle and Singer
/// 1997).
VectorXd undamped(const Layout& layout, double v) {
  VectorXd x(layout.unknowns());
  if (layout.humps == 1) {
    x << (1.0 + v) / 4.0, (1.0 - v) / 2.0, (1.0 + v) / 4.0, 0.5, ratiosAtCosine(-(1.0 - v) / (1.0 + v));
  } else if (layout.humps == 2) {
    const double root = std::cbrt(v * v * (std::sqrt(1.0 - v * v) + 1.0));
    const double outer = (3.0 * root * root + 2.0 * root + 3.0 * v * v) / (16.0 * root);
    const double inner = 0.5 - outer;
    // V = |8·outer·y³ + (2·inner − 6·outer)·y| with y = cos(πr/2); cos(πr) = 2y² − 1
    const double square = (3.0 * outer - inner) / (4.0 * outer);
    x << outer, inner, inner, outer, 0.5, 1.0, 1.5, ratiosAtCosine(2.0 * square - 1.0),
        ratiosAtCosine(2.0 * square / 3.0 - 1.0);
  } else {
    const double outer = (1.0 + 3.0 * v + 2.0 * std::sqrt(2.0 * (v * v + v))) / 16.0;
    const double inner = (1.0 - v) / 4.0;
    const double middle = 1.0 - 2.0 * (outer + inner);
    // V = |4·outer·y² + 2·inner·y + middle − 2·outer| with y = cos(πr)
    const double summit = -inner / (4.0 * outer);
    const double spread = std::sqrt(summit * summit - (middle - 2.0 * outer) / (4.0 * outer));
    x << outer, inner, middle, inner, outer, 0.5, 1.0, 1.5, 2.0, ratiosAtCosine(summit + spread),
        ratiosAtCosine(summit - spread), ratiosAtCosine(summit);
  }
  return x;
}

/// Direction of the curve of solutions at one of them, to the same side as `before`.
VectorXd tangentAt(const Layout& layout, const VectorXd& point, const VectorXd& before, double tolerance) {
  const VectorXd tangent = jacobianOf(layout, point, tolerance).fullPivLu().kernel().col(0).normalized();
  return tangent.dot(before) < 0.0 ? -tangent : tangent;
}

/// Follows the curve of solutions from ζ = 0 until it meets `damping`. Steps go along the curve and not
/// along ζ (pseudo-arclength continuation, Keller 1977): with three humps the curve turns back for a short
/// way near ζ = 0.2755. A step is halved where Newton's method fails and grows again where it does not.
std::optional<VectorXd> followed(const Layout& layout, double damping, double tolerance) {
  constexpr double longestStep = 0.1;
  constexpr double shortestStep = 1e-6;
  constexpr int mostSteps = 1000;
  const Index last = layout.unknowns();
  const VectorXd alongDamping = VectorXd::Unit(last + 1, last);
  VectorXd point(last + 1);
  point << undamped(layout, tolerance), 0.0;
  VectorXd tangent = alongDamping;
  double step = longestStep;
  for (int i = 0; i < mostSteps && point[last] < damping && step > shortestStep; ++i) {
    tangent = tangentAt(layout, point, tangent, tolerance);
    auto next = solve(layout, point + step * tangent, tangent, tolerance);
    if (next && (*next)[last] >= damping) {
      const double share = (damping - point[last]) / ((*next)[last] - point[last]);
      VectorXd between = point + share * (*next - point);
      between[last] = damping;
      next = solve(layout, between, alongDamping, tolerance);
    }
    if (next) {
      point = std::move(*next);
    }
    step = next ? std::min(2.0 * step, longestStep) : 0.5 * step;
  }
  return point[last] >= damping ? std::optional<VectorXd>(point.head(last)) : std::nullopt;
}

}  // namespace

Expected<ShaperShape> extraInsensitive(int humps, double damping, double tolerance) {
  if (humps < 1 || humps > 3) {
    return failure("an extra-insensitive shaper has 1, 2 or 3 humps");
  }
  if (!(damping >= 0.0 && damping <= 0.5) || !(tolerance >= 0.005 && tolerance <= 0.2)) {
    return failure(
        "an extra-insensitive shaper needs a damping from 0 to 0.5 and a tolerance from 0.005 to 0.2");
  }
  const Layout layout = layoutOf(humps);
  const auto x = followed(layout, damping, tolerance);
  if (!x || (layout.amplitudes(*x).array() <= 0.0).any()) {
    return failure("the extra-insensitive shaper has no solution for this damping");
  }
  ShaperShape shape{{}, damping};
  const VectorXd times = layout.times(*x);
  for (Index i = 0; i < layout.impulses; ++i) {
    shape.impulses.push_back({(*x)[i], times[i]});
  }
  return shape;
}

}  // namespace fettle::maths
