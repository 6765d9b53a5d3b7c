#include "core/maths/hinge.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/joined_profile.h"

namespace fettle::maths {
namespace {

/// A confidence limit on the residual sum of squares, and what a level line would have.
struct Limit {
  double sumOfSquares;
  double ofLevel;

  /// The fall itself is in doubt, so a hinge anywhere cannot be excluded.
  bool allowsLevel() const { return ofLevel <= sumOfSquares; }
};

std::optional<Eigen::Matrix3d> linearisedCovariance(const Hinge& fit, std::span<const double> x) {
  const auto count = static_cast<Eigen::Index>(x.size());
  const Eigen::ArrayXd values = Eigen::Map<const Eigen::ArrayXd>(x.data(), count);
  Eigen::MatrixXd jacobian(count, 3);
  jacobian.col(0).setOnes();
  jacobian.col(1) = -(values - fit.hinge).max(0);
  jacobian.col(2) = (values > fit.hinge).select(Eigen::ArrayXd::Constant(count, fit.slope), 0);
  const auto inverse = unscaledCovariance(jacobian);
  if (!inverse) {
    return std::nullopt;
  }
  return fit.residualSumOfSquares / fit.degreesOfFreedom * *inverse;
}

ProfileInterval hingeInterval(const JoinedLines& lines, double psi, const Limit& limit) {
  OuterEnds ends(lines, psi);
  if (limit.allowsLevel()) {
    ends.includeAll();
  } else {
    includeFallingJoins(lines, limit.sumOfSquares, ends);
  }
  return ends.interval();
}

/// Fall points allowed with the hinge inside a gap. With the right line y = r0 + r1 x the fall point L is
/// where (1 - f) plateau = r0 + r1 L: a linear condition for each L. It counts if the hinge that goes with
/// it, L + f plateau/r1, lies in the gap; else an end of the gap does better, which is a knot.
void includeFallsInGap(const JoinedLines::Gap& gap, double fraction, double limit, OuterEnds& ends) {
  const ProfilePiece piece(gap.piece->fit(), Eigen::Vector3d(1 - fraction, -1, 0),
                           Eigen::Vector3d(0, 0, -1));
  for (const Interval& stretch : piece.within(limit)) {
    for (const double fall : {stretch.low, stretch.high}) {
      if (!std::isfinite(fall)) {
        continue;
      }
      const Eigen::VectorXd c = piece.coefficientsAt(fall);
      const double hinge = fall + fraction * c[0] / c[2];
      if (c[0] > 0 && c[2] < 0 && hinge >= gap.low && hinge <= gap.high) {
        ends.include(fall);
      }
    }
  }
}

/// Fall points allowed with the hinge on a knot: slope (L - knot) = f plateau, linear for each L.
void includeFallsAtKnot(const JoinedLines::Knot& knot, double fraction, double limit, OuterEnds& ends) {
  const ProfilePiece piece(knot.fit, Eigen::Vector2d(-fraction, knot.x), Eigen::Vector2d(0, -1));
  for (const Interval& stretch : piece.within(limit)) {
    for (const double fall : {stretch.low, stretch.high}) {
      if (!std::isfinite(fall)) {
        continue;
      }
      const Eigen::VectorXd c = piece.coefficientsAt(fall);
      if (c[0] > 0 && c[1] < 0) {
        ends.include(fall);
      }
    }
  }
}

/// The set of fall points is bounded where the hinge lies inside a gap or on a knot, so its outer ends are
/// among the ends of the sets of these; only the last gap, whose line any hinge fits, reaches its end.
ProfileInterval fallPointInterval(const JoinedLines& lines, double estimate, double fraction,
                                  const Limit& limit) {
  OuterEnds ends(lines, estimate);
  if (limit.allowsLevel()) {
    ends.includeAll();
    return ends.interval();
  }
  for (const JoinedLines::Knot& knot : lines.knots()) {
    includeFallsAtKnot(knot, fraction, limit.sumOfSquares, ends);
  }
  for (const JoinedLines::Gap& gap : lines.gaps()) {
    if (gap.piece) {
      includeFallsInGap(gap, fraction, limit.sumOfSquares, ends);
    } else if (gap.residualSumOfSquares <= limit.sumOfSquares) {
      ends.include(gap.high);
    }
  }
  return ends.interval();
}

void addIntervals(const JoinedLines& lines, std::span<const double> x, std::span<const double> y,
                  const HingeOptions& options, Hinge& fit) {
  fit.covariance = linearisedCovariance(fit, x);
  const double centre = mean(y);
  Limit limit{profileLimit(fit.residualSumOfSquares, fit.degreesOfFreedom, options.confidence), 0};
  for (const double value : y) {
    limit.ofLevel += (value - centre) * (value - centre);
  }
  fit.hingeInterval = hingeInterval(lines, fit.hinge - lines.origin(), limit);
  if (fit.fallPoint) {
    fit.fallPointInterval =
        fallPointInterval(lines, *fit.fallPoint - lines.origin(), options.fallFraction, limit);
  }
}

}  // namespace

double Hinge::at(double x) const {
  return plateau - slope * std::max(x - hinge, 0.0);
}

Expected<Hinge> fitHinge(std::span<const double> x, std::span<const double> y,
                         const HingeOptions& options) {
  if (const auto reason = JoinedLines::reasonAgainst(x, y)) {
    return failure(*reason);
  }
  const JoinedLines lines(x, y);
  auto candidates = lines.candidates();
  // A fall this small is rounding in level data.
  const double rounding = 1e-12 * std::abs(*std::max_element(y.begin(), y.end(), [](double a, double b) {
                            return std::abs(a) < std::abs(b);
                          }));
  std::erase_if(candidates, [&](const auto& solution) {
    return -solution.rightSlope * (lines.last() - solution.psi) <= rounding;
  });
  const auto best = std::min_element(
      candidates.begin(), candidates.end(),
      [](const auto& a, const auto& b) { return a.residualSumOfSquares < b.residualSumOfSquares; });
  if (best == candidates.end()) {
    return failure("y does not fall, so there is no hinge");
  }
  Hinge fit;
  fit.plateau = best->level;
  fit.slope = -best->rightSlope;
  fit.hinge = best->psi + lines.origin();
  fit.residualSumOfSquares = best->residualSumOfSquares;
  fit.degreesOfFreedom = static_cast<double>(x.size()) - 3;
  for (std::size_t i = 0; i < x.size(); ++i) {
    fit.residuals.push_back(y[i] - fit.at(x[i]));
  }
  const double fallPoint = fit.hinge + options.fallFraction * fit.plateau / fit.slope;
  if (fit.plateau > 0 && std::isfinite(fallPoint)) {
    fit.fallPoint = fallPoint;
  }
  if (fit.degreesOfFreedom > 0) {
    addIntervals(lines, x, y, options, fit);
  }
  return fit;
}

}  // namespace fettle::maths
