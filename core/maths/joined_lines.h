#pragma once
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/maths/profile_piece.h"

namespace fettle::maths {

/// A level line and a sloping one right of it, joined at psi, seen piece by piece: for psi between two
/// neighbouring x the points fall to fixed sides, so the fit is two separate lines, profiled over where
/// they meet; for psi on an x it is linear (Hudson 1966, J. Am. Stat. Assoc. 61, 1097). Coefficients of a
/// gap are the level, then the right line (value at x = 0, slope); those of a knot are the level and the
/// slope. All x are taken from `origin`.
class JoinedLines {
 public:
  struct Gap {
    double low;
    double high;
    /// None when a side has too few different x for its line, which then fits whatever psi in the gap is.
    std::optional<ProfilePiece> piece;
    double residualSumOfSquares;
  };
  struct Knot {
    double x;
    LeastSquaresFit fit;
  };
  /// One joined fit; `rightSlope` is the slope right of psi.
  struct Solution {
    double psi;
    double residualSumOfSquares;
    double level;  ///< left of psi
    double rightSlope;
  };

  /// The reason why the points do not allow the fit, if any: unequal counts, numbers not finite, fewer
  /// points than coefficients, fewer than three different x.
  static std::optional<std::string> reasonAgainst(std::span<const double> x, std::span<const double> y);

  /// For points against which there is no reason.
  JoinedLines(std::span<const double> x, std::span<const double> y);

  double origin() const { return m_origin; }
  double first() const { return m_distinct.front(); }
  double last() const { return m_distinct.back(); }
  const std::vector<Gap>& gaps() const { return m_gaps; }
  /// The x on which psi can lie with a line determined on both sides, rising.
  const std::vector<Knot>& knots() const { return m_knots; }

  /// All candidates for the least sum of squares: every join inside its gap, and every knot.
  std::vector<Solution> candidates() const;
  /// Slope right of psi in a piece's coefficients.
  static double rightSlope(const Eigen::VectorXd& coefficients);

 private:
  Gap makeGap(double low, double high) const;
  /// In a gap without a piece the sum of squares is that of the one knot at its end.
  double sumOfSquaresBeside(double low, double high) const;

  double m_origin;
  Eigen::VectorXd m_x;
  Eigen::VectorXd m_y;
  std::vector<double> m_distinct;
  std::vector<Gap> m_gaps;
  std::vector<Knot> m_knots;
};

}  // namespace fettle::maths
