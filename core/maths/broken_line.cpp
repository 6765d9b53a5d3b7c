#include "core/maths/broken_line.h"

#include <algorithm>

#include "core/maths/joined_profile.h"

namespace fettle::maths {
namespace {

std::optional<Eigen::Matrix4d> linearisedCovariance(const BrokenLine& line, std::span<const double> x) {
  const auto count = static_cast<Eigen::Index>(x.size());
  const Eigen::ArrayXd values = Eigen::Map<const Eigen::ArrayXd>(x.data(), count);
  Eigen::MatrixXd jacobian(count, 4);
  jacobian.col(0).setOnes();
  jacobian.col(1) = (values - line.breakPoint).min(0);
  jacobian.col(2) = (values - line.breakPoint).max(0);
  jacobian.col(3) = (values > line.breakPoint)
                        .select(Eigen::ArrayXd::Constant(count, -line.slopeAfter), -line.slopeBefore);
  const auto inverse = unscaledCovariance(jacobian);
  if (!inverse) {
    return std::nullopt;
  }
  return line.residualSumOfSquares / line.degreesOfFreedom * *inverse;
}

}  // namespace

double BrokenLine::at(double x) const {
  const double beyond = x - breakPoint;
  return breakLevel + (beyond > 0 ? slopeAfter : slopeBefore) * beyond;
}

Expected<BrokenLine> fitBrokenLine(std::span<const double> x, std::span<const double> y,
                                   double confidence) {
  if (const auto reason = JoinedLines::reasonAgainst(x, y, LeftSide::sloping)) {
    return failure(*reason);
  }
  const JoinedLines lines(x, y, LeftSide::sloping);
  const auto candidates = lines.candidates();
  const auto best = std::min_element(
      candidates.begin(), candidates.end(),
      [](const auto& a, const auto& b) { return a.residualSumOfSquares < b.residualSumOfSquares; });
  if (best == candidates.end()) {
    return failure("the points cannot tell the two lines apart");
  }
  BrokenLine line;
  line.slopeBefore = best->left[1];
  line.slopeAfter = best->rightSlope;
  line.breakLevel = best->left[0] + line.slopeBefore * best->psi;
  line.breakPoint = best->psi + lines.origin();
  line.residualSumOfSquares = best->residualSumOfSquares;
  line.degreesOfFreedom = static_cast<double>(x.size()) - 4;
  for (std::size_t i = 0; i < x.size(); ++i) {
    line.residuals.push_back(y[i] - line.at(x[i]));
  }
  if (line.degreesOfFreedom > 0) {
    line.covariance = linearisedCovariance(line, x);
    OuterEnds ends(lines, best->psi);
    includeJoins(lines, profileLimit(line.residualSumOfSquares, line.degreesOfFreedom, confidence), false,
                 ends);
    line.breakPointInterval = ends.interval();
  }
  return line;
}

}  // namespace fettle::maths
