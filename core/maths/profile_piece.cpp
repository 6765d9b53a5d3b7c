#include "core/maths/profile_piece.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fettle::maths {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Where a theta^2 + 2 b theta + c <= 0, given b^2 - a c.
std::vector<Interval> nonPositive(double a, double b, double c, double discriminant) {
  if (discriminant < 0) {
    return a > 0 ? std::vector<Interval>{} : std::vector<Interval>{{-infinity, infinity}};
  }
  // Adding numbers of one sign keeps the digits of the smaller root.
  const double q = -(b + std::copysign(std::sqrt(discriminant), b));
  if (a == 0) {
    if (b == 0) {
      return c <= 0 ? std::vector<Interval>{{-infinity, infinity}} : std::vector<Interval>{};
    }
    const double root = -c / (2 * b);
    return {b > 0 ? Interval{-infinity, root} : Interval{root, infinity}};
  }
  double low = q / a;
  double high = q == 0 ? low : c / q;
  if (low > high) {
    std::swap(low, high);
  }
  if (a > 0) {
    return {{low, high}};
  }
  return {{-infinity, low}, {high, infinity}};
}

}  // namespace

ProfilePiece::ProfilePiece(LeastSquaresFit fit, Eigen::VectorXd fixed, Eigen::VectorXd moving)
    : m_fit(std::move(fit)), m_fixed(std::move(fixed)), m_moving(std::move(moving)) {}

Eigen::VectorXd ProfilePiece::coefficientsAt(double theta) const {
  const Eigen::VectorXd c = m_fixed + theta * m_moving;
  const Eigen::VectorXd direction = m_fit.unscaledCovariance * c;
  return m_fit.coefficients - direction * (c.dot(m_fit.coefficients) / c.dot(direction));
}

double ProfilePiece::best() const {
  return -m_fixed.dot(m_fit.coefficients) / m_moving.dot(m_fit.coefficients);
}

std::vector<Interval> ProfilePiece::within(double limit) const {
  const double room = limit - m_fit.residualSumOfSquares;
  if (room < 0) {
    return {};
  }
  const auto& inverse = m_fit.unscaledCovariance;
  const double fixed = m_fixed.dot(m_fit.coefficients);
  const double moving = m_moving.dot(m_fit.coefficients);
  const double fixedSquared = m_fixed.dot(inverse * m_fixed);
  const double movingSquared = m_moving.dot(inverse * m_moving);
  const double mixed = m_fixed.dot(inverse * m_moving);
  // b^2 - a c written out, so that little room left does not drown in rounding.
  const Eigen::VectorXd across = moving * m_fixed - fixed * m_moving;
  const double discriminant =
      room * (across.dot(inverse * across) - room * (fixedSquared * movingSquared - mixed * mixed));
  return nonPositive(moving * moving - room * movingSquared, fixed * moving - room * mixed,
                     fixed * fixed - room * fixedSquared, discriminant);
}

}  // namespace fettle::maths
