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

Eigen::Index leftCoefficients(LeftSide left) {
  return left == LeftSide::level ? 1 : 2;
}

}  // namespace

std::optional<std::string> JoinedLines::reasonAgainst(std::span<const double> x, std::span<const double> y,
                                                      LeftSide left) {
  if (x.size() != y.size()) {
    return "the fit got unequal numbers of x and y";
  }
  if (!allFinite(x) || !allFinite(y)) {
    return "the fit got a value that is not a finite number";
  }
  const std::size_t least = left == LeftSide::level ? 3 : 4;
  if (distinctOf(x).size() < least) {
    return "two joined lines need at least " + std::string(least == 3 ? "three" : "four") + " different x";
  }
  return std::nullopt;
}

JoinedLines::JoinedLines(std::span<const double> x, std::span<const double> y, LeftSide left)
    : m_left(left), m_origin(mean(x)) {
  const auto count = static_cast<Eigen::Index>(x.size());
  m_x = Eigen::Map<const Eigen::VectorXd>(x.data(), count).array() - m_origin;
  m_y = Eigen::Map<const Eigen::VectorXd>(y.data(), count);
  m_distinct = distinctOf({m_x.data(), static_cast<std::size_t>(count)});
  const auto order = leftCoefficients(left);
  for (std::size_t i = static_cast<std::size_t>(order) - 1; i + 1 < m_distinct.size(); ++i) {
    Eigen::MatrixXd design = Eigen::MatrixXd::Ones(count, order + 1);
    design.middleCols(1, order - 1) = m_x.replicate(1, order - 1);
    design.col(order) = (m_x.array() - m_distinct[i]).max(0);
    if (auto fit = fitLeastSquares(design, m_y)) {
      m_knots.push_back({m_distinct[i], std::move(*fit)});
    }
  }
  for (std::size_t i = 0; i + 1 < m_distinct.size(); ++i) {
    m_gaps.push_back(makeGap(m_distinct[i], m_distinct[i + 1]));
  }
}

JoinedLines::Gap JoinedLines::makeGap(double low, double high) const {
  const auto order = leftCoefficients(m_left);
  Eigen::MatrixXd design = Eigen::MatrixXd::Zero(m_x.size(), order + 2);
  for (Eigen::Index i = 0; i < m_x.size(); ++i) {
    const bool right = m_x[i] >= high;
    design(i, right ? order : 0) = 1;
    if (right || order == 2) {
      design(i, right ? order + 1 : 1) = m_x[i];
    }
  }
  auto fit = fitLeastSquares(design, m_y);
  if (!fit) {
    return {low, high, std::nullopt, sumOfSquaresBeside(low, high)};
  }
  Eigen::VectorXd fixed = Eigen::VectorXd::Zero(order + 2);
  Eigen::VectorXd moving = Eigen::VectorXd::Zero(order + 2);
  fixed[0] = 1;
  fixed[order] = -1;
  moving[order + 1] = -1;
  if (order == 2) {
    moving[1] = 1;
  }
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
  const auto order = leftCoefficients(m_left);
  std::vector<Solution> solutions;
  for (const Knot& knot : m_knots) {
    const Eigen::VectorXd& c = knot.fit.coefficients;
    const double slope = (order == 2 ? c[1] : 0) + c[order];
    solutions.push_back({knot.x, knot.fit.residualSumOfSquares, c.head(order), slope});
  }
  for (const Gap& gap : m_gaps) {
    if (gap.piece && gap.piece->best() > gap.low && gap.piece->best() < gap.high) {
      const Eigen::VectorXd& c = gap.piece->coefficients();
      solutions.push_back({gap.piece->best(), gap.residualSumOfSquares, c.head(order), rightSlope(c)});
    }
  }
  return solutions;
}

double JoinedLines::rightSlope(const Eigen::VectorXd& coefficients) {
  return coefficients[coefficients.size() - 1];
}

}  // namespace fettle::maths
