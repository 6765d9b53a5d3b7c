#include "core/maths/quadratic_surface.h"

#include <algorithm>
#include <cmath>

#include "core/maths/finite.h"
#include "core/maths/least_squares.h"

namespace fettle::maths {
namespace {

struct Span {
  double middle;
  double halfRange;
};

Span spanOf(std::span<const double> values) {
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return {(*least + *greatest) / 2, (*greatest - *least) / 2};
}

Eigen::RowVectorXd termsAt(double u, double v) {
  Eigen::RowVectorXd terms(6);
  terms << 1, u, v, u * u, v * v, u * v;
  return terms;
}

}  // namespace

double QuadraticSurface::at(double x, double y) const {
  const double u = (x - middleX) / halfRangeX;
  const double v = (y - middleY) / halfRangeY;
  return a + b * u + c * v + bowX * u * u + bowY * v * v + twist * u * v;
}

Expected<QuadraticSurface> fitQuadraticSurface(std::span<const double> x, std::span<const double> y,
                                               std::span<const double> z) {
  if (x.size() != y.size() || x.size() != z.size()) {
    return failure("the surface got unequal numbers of x, y and z");
  }
  if (x.size() < 6) {
    return failure("a quadratic surface needs at least six points");
  }
  if (!allFinite(x) || !allFinite(y) || !allFinite(z)) {
    return failure("the surface got a value that is not a finite number");
  }
  const Span spanX = spanOf(x);
  const Span spanY = spanOf(y);
  if (spanX.halfRange <= 0 || spanY.halfRange <= 0) {
    return failure("the points lie on one line, so no surface can be laid through them");
  }
  const auto count = static_cast<Eigen::Index>(x.size());
  Eigen::MatrixXd design(count, 6);
  for (Eigen::Index i = 0; i < count; ++i) {
    const auto at = static_cast<std::size_t>(i);
    design.row(i) =
        termsAt((x[at] - spanX.middle) / spanX.halfRange, (y[at] - spanY.middle) / spanY.halfRange);
  }
  constexpr double degenerate = 1e-9;
  const auto fit = fitLeastSquares(design, Eigen::Map<const Eigen::VectorXd>(z.data(), count), degenerate);
  if (!fit) {
    return failure("the points lie too few in one direction to tell bow from tilt");
  }
  const auto& k = fit->coefficients;
  QuadraticSurface surface{k[0],
                           k[1],
                           k[2],
                           k[3],
                           k[4],
                           k[5],
                           spanX.middle,
                           spanY.middle,
                           spanX.halfRange,
                           spanY.halfRange,
                           fit->covariance(),
                           {}};
  surface.residuals.assign(fit->residuals.begin(), fit->residuals.end());
  surface.residualStandardDeviation = fit->residualStandardDeviation();
  surface.rootMeanSquare = std::sqrt(fit->residualSumOfSquares / static_cast<double>(count));
  surface.degreesOfFreedom = fit->degreesOfFreedom;
  return surface;
}

}  // namespace fettle::maths
