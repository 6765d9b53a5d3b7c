#include "core/maths/cubic_spline.h"

#include <algorithm>

#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

/// Solves a tridiagonal system; the matrix of a spline needs no pivoting. All arguments are used up.
Eigen::VectorXd solveTridiagonal(const Eigen::VectorXd& below, Eigen::VectorXd diagonal,
                                 const Eigen::VectorXd& above, Eigen::VectorXd right) {
  const Eigen::Index last = diagonal.size() - 1;
  for (Eigen::Index i = 1; i <= last; ++i) {
    const double factor = below[i] / diagonal[i - 1];
    diagonal[i] -= factor * above[i - 1];
    right[i] -= factor * right[i - 1];
  }
  right[last] /= diagonal[last];
  for (Eigen::Index i = last - 1; i >= 0; --i) {
    right[i] = (right[i] - above[i] * right[i + 1]) / diagonal[i];
  }
  return right;
}

/// Slopes at four points or more: second derivatives join inside (de Boor 1978, IV eq. 8), third
/// derivatives join at the second and last but one (IV, not-a-knot condition).
Eigen::VectorXd notAKnotSlopes(const Eigen::VectorXd& h, const Eigen::VectorXd& chord) {
  const Eigen::Index n = h.size() + 1;
  Eigen::VectorXd below(n);
  Eigen::VectorXd diagonal(n);
  Eigen::VectorXd above(n);
  Eigen::VectorXd right(n);
  const double first = h[0] + h[1];
  diagonal[0] = h[1];
  above[0] = first;
  right[0] = ((h[0] + 2 * first) * h[1] * chord[0] + h[0] * h[0] * chord[1]) / first;
  for (Eigen::Index i = 1; i < n - 1; ++i) {
    below[i] = h[i];
    diagonal[i] = 2 * (h[i - 1] + h[i]);
    above[i] = h[i - 1];
    right[i] = 3 * (h[i] * chord[i - 1] + h[i - 1] * chord[i]);
  }
  const double last = h[n - 2] + h[n - 3];
  below[n - 1] = last;
  diagonal[n - 1] = h[n - 3];
  right[n - 1] =
      (h[n - 2] * h[n - 2] * chord[n - 3] + (2 * last + h[n - 2]) * h[n - 3] * chord[n - 2]) / last;
  return solveTridiagonal(below, diagonal, above, right);
}

/// Slopes of the line or the parabola through two or three points.
Eigen::VectorXd polynomialSlopes(const Eigen::VectorXd& h, const Eigen::VectorXd& chord) {
  if (h.size() == 1) {
    return Eigen::VectorXd::Constant(2, chord[0]);
  }
  const double curvature = (chord[1] - chord[0]) / (h[0] + h[1]);
  return Eigen::Vector3d(chord[0] - curvature * h[0], chord[0] + curvature * h[0],
                         chord[1] + curvature * h[1]);
}

}  // namespace

Expected<CubicSpline> CubicSpline::through(std::span<const double> x, std::span<const double> y) {
  if (x.size() != y.size() || x.size() < 2) {
    return failure("a spline needs two points or more, with as many y as x");
  }
  if (!allFinite(x) || !allFinite(y)) {
    return failure("the spline got a value that is not a finite number");
  }
  if (std::adjacent_find(x.begin(), x.end(), [](double a, double b) { return a >= b; }) != x.end()) {
    return failure("the x of a spline must rise from point to point");
  }
  const auto count = static_cast<Eigen::Index>(x.size());
  const Eigen::Map<const Eigen::VectorXd> xs(x.data(), count);
  const Eigen::Map<const Eigen::VectorXd> ys(y.data(), count);
  const Eigen::VectorXd h = xs.tail(count - 1) - xs.head(count - 1);
  const Eigen::VectorXd chord = (ys.tail(count - 1) - ys.head(count - 1)).cwiseQuotient(h);
  return CubicSpline(x, y, count < 4 ? polynomialSlopes(h, chord) : notAKnotSlopes(h, chord));
}

CubicSpline::CubicSpline(std::span<const double> x, std::span<const double> y,
                         const Eigen::VectorXd& slopes)
    : m_x(x.begin(), x.end()), m_pieces(4, slopes.size() - 1) {
  for (Eigen::Index i = 0; i < m_pieces.cols(); ++i) {
    const auto at = static_cast<std::size_t>(i);
    const double h = x[at + 1] - x[at];
    const double chord = (y[at + 1] - y[at]) / h;
    const double bend = (slopes[i] + slopes[i + 1] - 2 * chord) / h;
    m_pieces.col(i) << y[at], slopes[i], (chord - slopes[i]) / h - bend, bend / h;
  }
}

double CubicSpline::operator()(double x) const {
  const auto next = std::upper_bound(m_x.begin() + 1, m_x.end() - 1, x);
  const auto piece = next - m_x.begin() - 1;
  const double t = x - *(next - 1);
  const auto c = m_pieces.col(piece);
  return c[0] + t * (c[1] + t * (c[2] + t * c[3]));
}

}  // namespace fettle::maths
