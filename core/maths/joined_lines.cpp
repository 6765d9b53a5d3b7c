#include "core/maths/joined_lines.h"

#include <algorithm>
#include <limits>

#include "core/maths/descriptive.h"
#include "core/maths/finite.h"

namespace fettle::maths {
namespace {

std::vector<double> distinctOf(std::span<const double> values) {
  std::vector<double> distinct(values.begin(), values.end());
  std::sort(distinct.begin(), distinct.end());
  distinct.erase(std::unique(distinct.begin(), distinct.end()), distinct.end());
  return distinct;
}

}  // namespace

std::optional<std::string> JoinedLines::reasonAgainst(std::span<const double> x,
                                                      std::span<const double> y) {
  if (x.size() != y.size()) {
    return "the fit got unequal numbers of x and y";
  }
  if (!allFinite(x) || !allFinite(y)) {
    return "the fit got a value that is not a finite number";
  }
  if (distinctOf(x).size() < 3) {
    return "two joined lines need at least three different x";
  }
  return std::nullopt;
}

JoinedLines::JoinedLines(std::span<const double> x, std::span<const double> y) : m_origin(mean(x)) {
  const auto count = static_cast<Eigen::Index>(x.size());
  m_x = Eigen::Map<const Eigen::VectorXd>(x.data(), count).array() - m_origin;
  m_y = Eigen::Map<const Eigen::VectorXd>(y.data(), count);
  m_distinct = distinctOf({m_x.data(), static_cast<std::size_t>(count)});
  for (std::size_t i = 0; i + 1 < m_distinct.size(); ++i) {
    Eigen::MatrixXd design = Eigen::MatrixXd::Ones(count, 2);
    design.col(1) = (m_x.array() - m_distinct[i]).max(0);
    if (auto fit = fitLeastSquares(design, m_y)) {
      m_knots.push_back({m_distinct[i], std::move(*fit)});
    }
  }
  for (std::size_t i = 0; i + 1 < m_distinct.size(); ++i) {
    m_gaps.push_back(makeGap(m_distinct[i], m_distinct[i + 1]));
  }
}

JoinedLines::Gap JoinedLines::makeGap(double low, double high) const {
  Eigen::MatrixXd design = Eigen::MatrixXd::Zero(m_x.size(), 3);
  for (Eigen::Index i = 0; i < m_x.size(); ++i) {
    const bool isRight = m_x[i] >= high;
    design(i, isRight ? 1 : 0) = 1;
    design(i, 2) = isRight ? m_x[i] : 0;
  }
  auto fit = fitLeastSquares(design, m_y);
  if (!fit) {
    return {low, high, std::nullopt, sumOfSquaresBeside(low, high)};
  }
  const Eigen::Vector3d fixed(1, -1, 0);
  const Eigen::Vector3d moving(0, 0, -1);
  const double sumOfSquares = fit->residualSumOfSquares;
  return {low, high, ProfilePiece(std::move(*fit), fixed, moving), sumOfSquares};
}

double JoinedLines::sumOfSquaresBeside(double low, double high) const {
  double least = std::numeric_limits<double>::infinity();
  for (const Knot& knot : m_knots) {
    if (knot.x == low || knot.x == high) {
      least = std::min(least, knot.fit.residualSumOfSquares);
    }
  }
  return least;
}

std::vector<JoinedLines::Solution> JoinedLines::candidates() const {
  std::vector<Solution> solutions;
  for (const Knot& knot : m_knots) {
    const Eigen::VectorXd& c = knot.fit.coefficients;
    solutions.push_back({knot.x, knot.fit.residualSumOfSquares, c[0], c[1]});
  }
  for (const Gap& gap : m_gaps) {
    if (gap.piece && gap.piece->best() > gap.low && gap.piece->best() < gap.high) {
      const Eigen::VectorXd& c = gap.piece->coefficients();
      solutions.push_back({gap.piece->best(), gap.residualSumOfSquares, c[0], rightSlope(c)});
    }
  }
  return solutions;
}

double JoinedLines::rightSlope(const Eigen::VectorXd& coefficients) {
  return coefficients[coefficients.size() - 1];
}

}  // namespace fettle::maths
